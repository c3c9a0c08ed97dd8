/** What stands beside the list of the way back: days, one more item, needs, tools, reach. */
export const ahead = {
  timeLeft: (sentence: string) =>
    `Time left: ${sentence[0]?.toLowerCase() ?? ''}${sentence.slice(1).replace(': ', ', ')}`,
  byDate: 'By date',
  days: (count: number) => (count === 1 ? '1 step more' : `${count} steps more`),
  late: (day: string) => `late since ${day}, not counted on`,
  oneMore: 'What one more item would free',
  frees: (count: number) => (count === 1 ? 'frees 1 step' : `frees ${count} steps`),
  serve: 'Serve it first',
  served: 'Served first',
  serveNo: 'No longer',
  asks: 'Does it really have to be in this order?',
  ask: (later: string, earlier: string) => `Does ${later} really have to go in before ${earlier}?`,
  instead: (names: string) => `It would still go in before ${names}.`,
  yes: 'Yes, keep it',
  no: 'No, loosen it',
  tools: 'Tools for what is left',
  tool: (name: string) => (name === '' ? 'Tool not recorded' : name),
  standard: 'by the standard, not recorded',
  inSteps: (count: number) => (count === 1 ? 'in 1 step' : `in ${count} steps`),
  fewest: 'Order with the fewest changes of tool',
  changes: (changes: number, listed: number, exact: boolean) =>
    `${changes} ${changes === 1 ? 'change' : 'changes'} of tool instead of ${listed}. ${exact ? 'There is no order with fewer.' : 'Found by a rule of thumb: there may be fewer.'}`,
  noFewer: (changes: number, exact: boolean) =>
    exact
      ? `The list as it stands has the fewest changes of tool there can be: ${changes}.`
      : `No order with fewer than ${changes} changes of tool was found.`,
  reach: 'What must come off to reach something',
  reachAsk: 'What do you want to reach?',
  reachExample: 'Side cover, gasket',
  reachNone: 'Nothing is in the way.',
  offAgain: 'It is off again',
  states: { again: 'back on', partly: 'partly back', still: 'never off yet' },
  assumed: 'only by the order of the log',
  cost: (fasteners: number, shared: number) =>
    `${fasteners} ${fasteners === 1 ? 'fastener comes' : 'fasteners come'} out${shared > 0 ? `, ${shared} of them also from other removals` : ''}.`,
  minutes: (low: number, high: number) => `About ${low} to ${high} minutes.`,
  renew: (names: string) => `New ones needed: ${names}.`,
  worn: (names: string) => `New if worn: ${names}.`,
  safe: (names: string) => `Make safe again: ${names}.`,
  drain: (names: string) => `Drain again: ${names}.`,
  toolList: (names: string) => `Tools: ${names}.`,
  noneNamed: (typed: string) => `Nothing in this job is called “${typed}”.`,
  why: 'to reach something behind it',
};
