/** An earlier job as pattern: on Before you start, and where a planned removal is begun. */
export const pattern = {
  title: 'Like an earlier job',
  teach:
    'The removals of an earlier job on a like machine become a plan here, with counts and torques to expect. Photos, bags and conditions are not taken over.',
  pick: 'Earlier job',
  choose: 'Choose one',
  use: 'Use it as pattern',
  follows: 'Follows ',
  begun: (begun: number, all: number) => `${begun} of ${all} begun`,
  differs: 'What differs',
  same: 'Nothing differs so far.',
  beyond: 'Not in the earlier job.',
  expected: 'Expected',
  of: (count: number) => `of ${count} expected`,
  fewer: (what: string) => `− One less: ${what}`,
  more: (what: string) => `+ One more: ${what}`,
  begin: 'It is off',
  again: 'Comes off again',
  teachAgain:
    'It was back. Enter when it is off again: seals and bolts tightened by angle must be new once more.',
  teachBegin: 'Count what comes off. Enter when it is off; or type what you find below.',
};
