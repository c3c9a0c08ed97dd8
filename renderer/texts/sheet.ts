/** Printing the put-back sheet. */
export const sheet = {
  print: 'Print the sheet',
  title: 'Put-back sheet to print',
  say: 'A PDF on A4, made for black and white: photo with numbered holes, boxes to tick, order, torque, notes.',
  which: 'Which steps',
  steps: { one: 'This step', all: 'All that is left' },
  photos: 'Photos',
  manner: { grey: 'Photos in grey', light: 'Photos as lines, saves ink' },
  go: 'Make the PDF',
  making: 'It is being made …',
  noAnswer: 'The program did not answer, so there is no sheet. Try again.',
  fileName: (job: string) => `${job.replace(/[^\p{L}\p{N} -]/gu, '').trim() || 'job'} put back.pdf`,
};
