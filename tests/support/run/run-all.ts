import type { Outcome } from './outcome.ts';
import type { Place, Stage } from './stages.ts';
import { failureLines, lastLine, stageLine } from './summary.ts';

/** A stage that falls over is one failure; the others still run and the last line still comes. */
async function runStage(stage: Stage, place: Place): Promise<Outcome> {
  try {
    return await stage.run(place);
  } catch (error) {
    const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { passed: 0, failures: [{ what: stage.name, why }], excused: 0 };
  }
}

/**
 * Runs the stages one after the other, printing a line for each and the details of failures.
 * @returns the exit code: 1 when anything failed or when there was nothing to run
 */
export async function runAll(
  stages: readonly Stage[],
  place: Place,
  print: (line: string) => void,
): Promise<0 | 1> {
  const outcomes: Outcome[] = [];
  for (const stage of stages) {
    const start = performance.now();
    const outcome = await runStage(stage, place);
    outcomes.push(outcome);
    print(stageLine(stage.name, outcome, performance.now() - start));
    for (const line of failureLines(outcome)) print(line);
  }
  print(lastLine(outcomes));
  const clean = outcomes.length > 0 && outcomes.every((outcome) => outcome.failures.length === 0);
  return clean ? 0 : 1;
}
