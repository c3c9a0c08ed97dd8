import { expect, it } from 'vitest';
import { killAgainAndAgain } from './kill.ts';

it('after twenty kills every acknowledged change is there, the chain is whole, and the check is clean', async () => {
  const report = await killAgainAndAgain(20);
  expect(report.faults).toEqual([]);
  expect(report.acknowledged).toBeGreaterThan(20);
}, 180_000);
