/** What the window says beside the screens: on the line, while saving, when the program is away. */
export const windowText = {
  pieces: 'pieces',
  off: 'off',
  back: 'back',
  left: 'left',
  untitled: 'not named yet',
  unsaved: 'not saved yet',
  givenUp: 'given up',
  planned: 'planned',
  away: 'away',
  awayLate: (late: string) => `away, ${late} late`,
  noAnswer: 'The program does not answer. What you type is kept here.',
  timeLeft: (range: string) => `${range} left`,
};
