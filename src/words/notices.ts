/** What the page tells by itself, each in a sentence and the answers to it. */

/** One at a time of a key: telling it again replaces it. */
export type Notice = {
  key:
    | 'kept-elsewhere'
    | 'not-kept'
    | 'one-panel'
    | 'panels-lost'
    | 'panels'
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
export const changedElsewhere = (takeThat: () => void, keepThis: () => void): Notice => ({
  key: 'kept-elsewhere',
  says: 'This work was changed in another tab. Nothing more is kept of this one until you choose.',
  answers: [
    { says: 'Take that one', act: takeThat },
    { says: 'Keep this one', act: keepThis },
  ],
});

/** The same where there is room for any number of panels: neither waits for an answer. */
export const panelElsewhere = (takeThat: () => void, putInPlace: () => void): Notice => ({
  key: 'kept-elsewhere',
  says: 'This panel was changed in another tab. What you do here is kept as a panel of its own.',
  answers: [
    { says: 'Take that one', act: takeThat },
    { says: 'Put this one in its place', act: putInPlace },
  ],
});

/** A later version of the page has changed the panel in hand, or it cannot be read for another reason. */
export const panelOfNewer = (): Notice => ({
  key: 'kept-elsewhere',
  says: 'A newer version of this page has changed this panel. What you do here is kept as a panel of its own: open the page again before you go on.',
  answers: [{ says: 'All right' }],
});

/** A later version of the page has kept work under the same name: it is not written over. */
export const keptByNewer = (saveIt: () => void): Notice => ({
  key: 'kept-elsewhere',
  says: 'A newer version of this page has kept work here. Open the page again before you go on: what you do here is not kept.',
  answers: [{ says: 'Save this as a file', act: saveIt }, { says: 'All right' }],
});

export const notKept = (saveIt: () => void): Notice => ({
  key: 'not-kept',
  says: 'This device keeps nothing more. What you change now is gone when you close the page.',
  answers: [{ says: 'Save it as a file', act: saveIt }, { says: 'All right' }],
});

/** The browser lends no database: the one panel in hand is kept in its simple store. */
export const onePanelOnly = (saveIt: () => void): Notice => ({
  key: 'one-panel',
  says: 'This browser keeps one panel only, and perhaps not for long. Save what you want to keep as a file.',
  answers: [{ says: 'Save it as a file', act: saveIt }, { says: 'All right' }],
});

/** The database is a later version's. */
export const panelsOfNewer = (): Notice => ({
  key: 'panels',
  says: 'Your panels are kept by a newer version of this page. Open the page again to reach them.',
  answers: [{ says: 'All right' }],
});

/** The browser has lost its database, as it does with a damaged one. */
export const panelsLost = (): Notice => ({
  key: 'panels-lost',
  says: 'The browser has lost the panels it kept here. The one you had in hand is still there.',
  answers: [{ says: 'All right' }],
});

/** What was kept is no work, or a later version's. @param isExample there is no other work, so the example is shown */
export const setAside = (saveIt: () => void, isExample: boolean): Notice => ({
  key: 'set-aside',
  says: isExample
    ? 'What is kept on this device cannot be read by this version. It is set aside, and this is an example.'
    : 'What was kept last cannot be read by this version. It is set aside, and this is the last panel that can.',
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
  says: 'This panel is yours now. The one you had is kept as it was.',
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
