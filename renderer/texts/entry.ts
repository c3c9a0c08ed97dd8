/** The entry line and its number pad. */
export const entry = {
  name: 'What came off',
  empty: 'What came off?',
  understood: 'Understood',
  teach: 'Type what came off, as you would say it:',
  examples: ['5 13', '4 M10x30 hex 16, bag 4', 'hose, lower, 2 ends', 'slackened tensioner'],
  missed: (words: readonly string[]) => `Not understood, kept as a note: ${words.join(', ')}`,
  pad: 'Number pad',
  times: 'times, or by',
  next: 'Next removal',
  enter: 'Enter',
  same: 'Same as last',
};
