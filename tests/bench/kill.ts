import { killAgainAndAgain } from '../faults/kill.ts';

/** Two hundred kills of the host, between and during commits. Prints what was acknowledged and what is missing: nothing. */
const report = await killAgainAndAgain(200);
console.log(
  `${report.kills} kills, ${report.acknowledged} acknowledged changes, ${report.faults.length} faults`,
);
for (const fault of report.faults) console.log(fault);
process.exitCode = report.faults.length === 0 ? 0 : 1;
