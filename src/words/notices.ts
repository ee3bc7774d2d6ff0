/** What the page tells by itself, each in a sentence and the answers to it. */

/** One at a time of a key: telling it again replaces it. */
export type Notice = {
  key:
    | 'kept-elsewhere'
    | 'not-kept'
    | 'set-aside'
    | 'part-missing'
    | 'newer-version'
    | 'sent-panel'
    | 'sent-kept'
    | 'link-broken'
    | 'mishap-unfit'
    | 'choice-settled';
  says: string;
  /** Pressing an answer takes the notice away; one without `act` does only that. */
  answers: readonly { says: string; act?: () => void }[];
};

/** Two tabs have the same work, and both changed it. */
export const keptElsewhere = (takeThat: () => void, keepThis: () => void): Notice => ({
  key: 'kept-elsewhere',
  says: 'This work was changed in another tab. Nothing more is kept of this one until you choose.',
  answers: [
    { says: 'Take that one', act: takeThat },
    { says: 'Keep this one', act: keepThis },
  ],
});

export const notKept = (): Notice => ({
  key: 'not-kept',
  says: 'This device keeps nothing more. What you change now is gone when you close the page.',
  answers: [{ says: 'All right' }],
});

/** What was kept is no work, or a later version's: the example is shown in its place. */
export const setAside = (saveIt: () => void): Notice => ({
  key: 'set-aside',
  says: 'What is kept on this device cannot be read by this version. It is set aside, and this is an example.',
  answers: [{ says: 'Save it as a file', act: saveIt }, { says: 'All right' }],
});

export const newerVersion = (useIt: () => void): Notice => ({
  key: 'newer-version',
  says: 'A newer version is ready.',
  answers: [{ says: 'Use it', act: useIt }, { says: 'Later' }],
});

/** A mishap was put in that the panel, changed since, has no place for. */
export const mishapUnfit = (says: string, takeOut: () => void): Notice => ({
  key: 'mishap-unfit',
  says: `${says}.`,
  answers: [{ says: 'Take it out', act: takeOut }],
});

/** A panel with fewer sides lacks the side that a choice was on. */
export const choiceSettled = (
  gone: number,
  fallen: readonly { name: string; side: number }[],
  undo: () => void,
): Notice => ({
  key: 'choice-settled',
  says: [
    `There is no side ${gone} any more.`,
    ...fallen.map(({ name, side }) => `Side ${side} is again the ${name}.`),
  ].join(' '),
  answers: [{ says: 'Undo', act: undo }],
});

/** A panel was opened from an address: it is looked at, and the own work stays as it was kept. */
export const sentPanel = (backToMine: () => void, keepIt: () => void): Notice => ({
  key: 'sent-panel',
  says: 'This panel was sent to you. Your own is kept as it was, and nothing you do here changes it.',
  answers: [
    { says: 'Back to mine', act: backToMine },
    { says: 'Keep this one', act: keepIt },
  ],
});

export const sentKept = (bringBack: () => void): Notice => ({
  key: 'sent-kept',
  says: 'This panel is yours now. The one you had is set aside.',
  answers: [{ says: 'Bring mine back', act: bringBack }, { says: 'All right' }],
});

const brokenLinks: Record<LinkProblem, string> = {
  cut: 'The address is not whole: it was cut or changed on the way. Ask for it once more. This is your own panel.',
  newer: 'The address comes from a newer version. Open the page again to fetch it. This is your own panel.',
  unreadable: 'The address holds no panel that can be read. This is your own panel.',
};

export const linkBroken = (why: LinkProblem): Notice => ({
  key: 'link-broken',
  says: brokenLinks[why],
  answers: [{ says: 'All right' }],
});

type LinkProblem = 'cut' | 'newer' | 'unreadable';
