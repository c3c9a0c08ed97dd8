/** The Jobs screen. */
export const jobs = {
  title: 'Jobs',
  search: 'Search every job',
  searchHint: '/',
  carryOn: 'Carry on',
  start: 'Start a job',
  startHint: 'N',
  handbookHint: 'F8',
  enter: 'Enter',
  others: 'Other jobs',
  off: (off: number, back: number) => (off === 0 ? 'Nothing off yet' : `${off} off, ${back} back`),
  offBackLeft: (off: number, back: number, left: number) =>
    off === 0
      ? 'Nothing off yet'
      : left === 0
        ? `All ${off} back`
        : back === 0
          ? `${off} off, 0 back`
          : `${off} off, ${back} back, ${left} left`,
  empty: 'Nothing is apart.',
  emptyHow:
    'Begin with a machine of your own: say what it is, take the first thing off, and this page remembers where everything was.',
  startOwn: 'Start my own',
  sample: 'Open the sample job',
  sampleHint: 'S',
  sampleHow:
    'Or look around first: the sample is a blower head, in three stages: half apart, half back, finished. Nothing in it is real.',
  found: (count: number) => (count === 1 ? '1 place found' : `${count} places found`),
  notFound: (words: string) => `Nothing found for “${words}”.`,
  near: 'Nearest in this workshop',
  lookedIn: (fields: string) => `Looked in every job: ${fields}.`,
  foundHere: 'Found here',
  inJob: (job: string) => `in ${job}`,
  counts: { off: 'off', back: 'back', pieces: 'pieces' },
  since: (date: string) => `since ${date}`,
  due: (date: string) => `Due ${date}`,
  late: (time: string) => `${time} late`,
  inside: (names: string) => `Still inside: ${names}.`,
  haltNoNote: 'Work was stopped.',
  begin: 'Take the first thing off',
  goOn: (number: number) => `Carry on after ${number}`,
  look: 'Look at it',
  goOnBack: 'Carry on putting back',
  nothingOpen: 'Nothing open',
  closed: (open: string) => `Closed. ${open}`,
  openPoints: (count: number) => (count === 1 ? '1 open point' : `${count} open points`),
  startTitle: 'Start a job',
  startAsk: 'What machine, or what part of it?',
  startExample: 'Bench grinder, left wheel',
  startGo: 'Start',
  noPhoto: 'No photo yet',
  facts: {
    last: 'Last off',
    lastBack: 'Last back',
    loose: 'Loose',
    away: 'Away',
    open: 'Open to air',
    uncounted: 'Not counted since',
    handover: 'Handed over',
  },
};
