function leftOf(seconds: number): string {
  if (seconds < 60) return `${Math.max(1, Math.round(seconds))} s left`;
  return `${Math.round(seconds / 60)} min left`;
}

const photos_ = (count: number): string => (count === 1 ? '1 photo' : `${count} photos`);

/** Photos on their way in. */
export const photos = {
  add: 'Add photos',
  addHow: 'Drop photos here, paste them, or choose files. They may come before the log.',
  drop: 'Let go: the photos are added to this job.',
  pasted: 'pasted.png',
  noAnswer: 'Expected the program to take this photo, but it does not answer. Add it again.',
  progress: (done: number, total: number, left: number | null) =>
    `Adding photos: ${done} of ${total}${left === null ? '' : `, ${leftOf(left)}`}.`,
  came: (added: number, here: number, given: number) =>
    [
      `${photos_(added)} added.`,
      here === 0 ? '' : `${here} ${here === 1 ? 'was' : 'were'} here already.`,
      given === 0 ? '' : `${given} not added.`,
    ]
      .filter(Boolean)
      .join(' '),
  told: (first: string, more: number) =>
    more === 0 ? first : `${first} And ${more} more: all of them stand under Photos, F9.`,
};
