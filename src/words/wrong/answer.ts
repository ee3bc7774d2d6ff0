/** Answering somebody who asked what went wrong. */

export const sayAnswer = {
  send: 'Send this answer back',
  sendAbout: 'Whoever asked sees their own counts, with this cause and this cure.',
  what: 'the answer',
  letter: (cause: readonly string[], cure: string): string =>
    [...cause, `To put it right: ${cure}.`].join('\n'),
  sent: 'The answer you were sent',
  /** One cure is right whatever the cause. */
  anyCause: 'The answer names no cause: one way puts it right whatever it was. It is marked below.',
  lost: 'The cause that the answer names is not among those found here. The counts may be other ones by now.',
  takeAway: 'Take the answer away',
  named: 'in the answer',
} as const;
