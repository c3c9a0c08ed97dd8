import { describe, expect, it } from 'vitest';
import { parseStages, tighteningRounds } from '../../core/fastening/index.ts';

describe('rounds', () => {
  it('are snug, 30, 70, 100 % and once around, each hole once in each', () => {
    const order = ['1', '5', '3', '7', '2', '6', '4', '8'];
    const around = ['1', '2', '3', '4', '5', '6', '7', '8'];
    const rounds = tighteningRounds({ order, around, targetNm: () => 50 });
    expect(rounds.map((r) => r.name)).toEqual(['snug', '30 %', '70 %', '100 %', 'once around']);
    expect(rounds.map((r) => r.torquesNm[0])).toEqual([undefined, 15, 35, 50, 50]);
    for (const round of rounds) expect(new Set(round.order).size).toBe(8);
    expect(rounds.at(-1)?.order).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
  });

  it('take each hole’s own target where sets differ', () => {
    const rounds = tighteningRounds({
      order: ['1', '2', '3'],
      around: ['1', '2', '3'],
      targetNm: (id) => (id === '2' ? 40 : 20),
    });
    expect(rounds[1]?.torquesNm).toEqual([6, 12, 6]);
  });

  it('give way to the stages of the maker, and never turn on after an angle', () => {
    const stages = parseStages('20 N·m + 60 N·m + 90°');
    if (!stages.ok) throw new Error(stages.sentence);
    const rounds = tighteningRounds({
      order: ['1', '2', '3'],
      around: ['1', '2', '3'],
      makerStages: stages.value.stages,
    });
    expect(rounds.map((r) => r.says.replace('All holes ', ''))).toEqual([
      expect.stringContaining('snug'),
      'to 20 N·m.',
      'to 60 N·m.',
      'on by 90°.',
    ]);
  });
});
