/** The sentences of "Take along". */
import type { TakeAlongMessages } from '../pattern/messages.ts';
import { counted, type Speaker } from '../speaker.ts';

/** "1 minute 4 seconds" */
function lasting(seconds: number, speaker: Speaker): string {
  const minutes = Math.floor(seconds / 60);
  const rest = counted(speaker, seconds % 60, { one: 'second', other: 'seconds' });
  return minutes === 0 ? rest : `${counted(speaker, minutes, { one: 'minute', other: 'minutes' })} ${rest}`;
}

export const takeAlong: TakeAlongMessages = {
  heading: 'Take along',
  intro: 'The whole recipe as a pattern to print, to send or to read at the table.',
  yours: 'Yours',
  title: 'title',
  designer: 'designed by',
  notes: 'notes',
  terms: 'Terms of the pattern',
  termsBoth: 'UK and US',
  copy: 'Copy the text',
  saveText: 'Save as text',
  saveMarkdown: 'Save as Markdown',
  saveHtml: 'Save as a page',
  copied: 'The text is copied.',
  notCopied: 'The browser did not let it be copied. Save it instead.',
  saved: ({ file }) => `Saved as ${file}.`,
  waits: 'This is from your last numbers.',
  pattern: 'The pattern',

  sizes: 'Several sizes',
  sizesIntro: 'One size a line: its name, a colon, and its counts as you count them.',
  sizesField: 'sizes',
  rule: 'Or by a rule: each size has',
  ruleField: 'stitches more a side',
  ruleCount: 'sizes in all',
  ruleApply: 'Fill the sizes in',
  sizesMost: ({ most }, { formatting: { plain } }) => `Only the first ${plain(most)} sizes are written out.`,
  ruleUnread: ({ most }, { formatting: { plain } }) =>
    `Give the stitches as a whole number, and 2 to ${plain(most)} sizes.`,
  sizeWorks: ({ name, total }, { formatting }) => `${name}: works, ${formatting.plain(total)} in all.`,
  sizeFails: ({ name, why }) => `${name}: cannot be worked. ${why}.`,
  sizeUnread: ({ line, sides }, speaker) =>
    `"${line}" is not read. Give a name, a colon, and 1 count or ${counted(speaker, sides, { one: 'count', other: 'counts' })}.`,
  sideOf: ({ side, name }) => `side ${side + 1} of ${name}`,
  ringOf: ({ name }) => `the round of ${name}`,

  send: 'Send it',
  sendAbout:
    'The address holds all of the panel. Nothing is uploaded, and who opens it keeps their own work.',
  sendShow: 'Show my panel',
  sendShowAbout: 'It opens on the edge, as you entered it.',
  sendShowLetter: 'This is my panel, and the back for it:',
  sendHelp: 'Help me find out',
  sendHelpAbout:
    'It opens on what went wrong, with your counts filled in. The answer comes back the same way.',
  sendHelpLetter: 'My counts do not come out as they should. What went wrong?',
  sendHow: 'To see it drawn: paste all of this into Ringtrue, under Take along.',
  sendAddress: 'address',
  sendShare: 'Share',
  sendCopy: 'Copy the address',
  sendCopied: 'The address is copied.',
  sendSelected: 'The browser did not let it be copied. It is selected: copy it by hand.',
  sendLines: 'The same as text',
  sendLinesAbout: 'For where addresses are not allowed. Change nothing in it: the last line notices.',
  sendCopyLines: 'Copy as text',
  sendLinesCopied: 'The text is copied.',
  clip: 'A clip for a lesson',
  clipAbout: 'A stretch of the walk as a video without sound, with what is to be done written into it.',
  clipFrom: 'from',
  clipTo: 'to the end of',
  clipPace: 'each step is shown for',
  clipSeconds: ({ seconds }, speaker) =>
    seconds === 0.5 ? 'half a second' : counted(speaker, seconds, { one: 'second', other: 'seconds' }),
  clipLength: ({ steps, seconds }, speaker) =>
    `${counted(speaker, steps, { one: 'step', other: 'steps' })}, ${lasting(seconds, speaker)}.`,
  clipTooLong: ({ steps, most }, { formatting: { plain } }) =>
    `That is ${plain(steps)} steps. A clip holds at most ${plain(most)}: choose less.`,
  clipMake: 'Make the clip',
  clipProgress: 'How far the clip is',
  clipDone: ({ done, all }, { formatting: { plain } }) => `${plain(done)} of ${plain(all)} steps`,
  clipStop: 'Stop',
  clipStopped: 'Stopped. Nothing was saved.',
  clipFailed: 'The clip could not be made here. A shorter one may work.',
  clipSaved: ({ file, seconds }, speaker) => `Saved as ${file}, ${lasting(seconds, speaker)}.`,
  clipSavedStills: ({ file, pictures }, speaker) =>
    `This browser makes no video. Saved as ${file}: ${counted(speaker, pictures, { one: 'picture', other: 'pictures' })}, one a step.`,
  opening: 'Open what was sent to you',
  openingAbout: 'It is shown beside your own work, which stays as it is.',
  openingField: 'the address or the text, with all that stands around it',
  openingOpen: 'Open it',
  openingTroubles: {
    cut: 'It is not whole: some of it was cut off or changed on the way. Ask for it once more.',
    newer: 'It comes from a newer version. Open this page again to fetch that one.',
    unreadable: 'It is whole, and yet there is no panel in it that can be read.',
    nothing: 'There is no address in it, and no text of a panel. Paste all that you were sent.',
  },
  sendLong: ({ signs }, { formatting: { plain } }) =>
    `This address has ${plain(signs)} signs. ${signs > 8000 ? 'Most programs cut such long ones: save the panel as a file, under Your panels.' : 'Some programs cut such long ones: the text below can be sent instead.'}`,

  check: 'Check a written pattern',
  checkIntro:
    'Paste the rounds of a pattern whose sides are all alike. Each is worked stitch by stitch, and its count compared.',
  checkField: 'the rounds, one a line',
  checkSides: 'sides',
  checkCorner: 'chains in a corner',
  checkArm: 'stitches on each side of a corner',
  checkTakes: 'Its totals take the corner chains in.',
  checkNothing: 'No round is found. Begin each line with "Round 1:".',
  checkRead: 'This was read. Change a line where it is wrong.',
  checkRight: 'That is right: check it',
  checkNumbers: 'Give the sides, the chains and the stitches as whole numbers.',
  checkTooFew: 'At least 2 rounds must have a count that can be read, like "Round 2: 20 dc in all".',
  checkNoMend: 'No single change makes all of it agree.',
  checkCount: ({ round, of, count }, { formatting: { plain } }) =>
    `Round ${plain(round)}: ${plain(count)} ${of === 'side' ? 'on each side' : 'in all'}`,
  checkOpen: ({ round }, { formatting: { plain } }) => `Round ${plain(round)}: no count that is sure`,
  checkAgrees: ({ rounds }, speaker) =>
    `${counted(speaker, rounds, { one: 'count', other: 'counts' })} compared: the pattern agrees with itself.`,
  checkMend: (mend, { formatting: { plain } }) => {
    switch (mend.kind) {
      case 'arm':
        return `With ${plain(mend.to)} on each side of a corner, all counts agree.`;
      case 'corner':
        return `With ${plain(mend.to)} chains in a corner, all counts agree.`;
      case 'takes-corners':
        return mend.to
          ? 'If its totals take the corner chains in, all counts agree.'
          : 'If its totals leave the corner chains out, all counts agree.';
      case 'count':
        return `With ${plain(mend.to)} in round ${plain(mend.round)}, all counts agree.`;
    }
  },
};
