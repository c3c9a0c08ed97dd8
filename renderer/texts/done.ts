/** What was done on the way back, by whom and when. */
export const done = {
  title: 'What was done',
  passedTitle: 'Passed by name',
  line: (when: string, by: string, what: string) => `${when}${by === '' ? '' : `, ${by}`}: ${what}`,
  passed: (what: string, why: string) => `${what} Passed: ${why}`,
  back: (when: string, by: string) => (by === '' ? `back ${when}` : `back ${when}, ${by}`),
  next: 'Next step',
  list: 'The whole list',
};
