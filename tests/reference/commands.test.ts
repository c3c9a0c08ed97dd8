import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { inputsOf, num, offPercent, rowsOf, text, type Row } from './rows.ts';

/** Every row of every outside table, asked as somebody at a command line asks it, and read from the one JSON value. */

interface Said {
  readonly code: number;
  /** The value at a path such as "reference.torqueNm". */
  readonly at: (path: string) => unknown;
  /** The number at a path; fails with what stands there instead. */
  readonly number: (path: string) => number;
  readonly all: unknown;
}

async function ask(...args: readonly string[]): Promise<Said> {
  const answer = await runCommand([...args, '--json']);
  // What a script reads has gone through JSON.
  const all: unknown = JSON.parse(JSON.stringify(answer.value ?? null));
  const at = (path: string): unknown =>
    path.split('.').reduce<unknown>((value, name) => {
      return typeof value === 'object' && value !== null
        ? (value as Record<string, unknown>)[name]
        : undefined;
    }, all);
  return {
    code: answer.code,
    at,
    all,
    number: (path) => {
      const value = at(path);
      if (typeof value !== 'number')
        throw new Error(`${args.join(' ')}: no number at ${path} in ${JSON.stringify(all).slice(0, 400)}`);
      return value;
    },
  };
}

const near = (actual: number, expected: number, percent: number, says: string): void =>
  expect(offPercent(actual, expected), `${says}: ${actual} against ${expected}`).toBeLessThanOrEqual(percent);

describe('threads', () => {
  it('of ISO 261, by name and by measure', async () => {
    for (const row of rowsOf('iso_metric_threads')) {
      const name = text(row, 'designation');
      const said = await ask('identify', '--thread', name);
      expect(said.number('thread.nominalMm')).toBe(num(row, 'nominal_d_mm'));
      expect(said.number('thread.pitchMm')).toBe(num(row, 'pitch_mm'));
      expect(said.at('thread.series')).toBe(text(row, 'series'));
      expect(said.number('thread.stressAreaMm2')).toBe(num(row, 'tensile_stress_area_mm2'));
      near(said.number('thread.formulaAreaMm2'), num(row, 'formula_area_mm2'), 0.01, name);
      near(said.number('thread.pitchDiameterMm'), num(row, 'd2_mm'), 0.01, name);
      near(said.number('thread.minorDiameterMm'), num(row, 'd3_mm'), 0.01, name);
      const measured = await ask(
        'identify',
        `--diameter=${num(row, 'nominal_d_mm') - 0.1}`,
        '--pitch',
        text(row, 'pitch_mm'),
      );
      expect(JSON.stringify(measured.at('candidates.0.designation'))).toContain(name.split('x')[0]);
    }
  });

  it('of ASME B1.1, by name and by measure', async () => {
    for (const row of rowsOf('unified_threads')) {
      const name = text(row, 'designation');
      const said = await ask('identify', '--thread', name);
      near(said.number('thread.nominalIn'), num(row, 'major_d_in'), 1e-6, name);
      expect(said.number('thread.tpi')).toBe(num(row, 'tpi'));
      expect(said.at('thread.series')).toBe(text(row, 'series'));
      near(said.number('thread.stressAreaIn2'), num(row, 'tensile_stress_area_in2'), 1e-6, name);
      near(said.number('thread.formulaAreaIn2'), num(row, 'formula_area_in2'), 0.1, name);
      const measured = await ask(
        'identify',
        '--diameter',
        `${num(row, 'major_d_in') - 0.002} in`,
        '--tpi',
        text(row, 'tpi'),
      );
      expect(measured.at('candidates.0.designation')).toBe(name);
    }
  });

  it('of every head, from the tool and from the thread', async () => {
    for (const row of rowsOf('widths_across_flats')) {
      const size = text(row, 'thread_or_drive');
      const tool = `${text(row, 'tool_size')} ${text(row, 'unit')}`;
      if (text(row, 'unit') === 'mm' && text(row, 'drive') === 'hexalobular') {
        expect((await ask('identify', '--hexalobular', size)).number('hexalobularMm')).toBe(
          num(row, 'tool_size'),
        );
        continue;
      }
      const [option, key, value] = {
        'hex external': ['--across-flats', 'acrossFlats', tool] as const,
        'hex socket': ['--hex-key', 'hexKey', tool] as const,
      }[text(row, 'drive')] ?? ['--hexalobular', 'hexalobular', text(row, 'tool_size')];
      const found = await ask('identify', option, value);
      const threads = found.at(`${key}.threads`) as { size: string; standards: { standard: string }[] }[];
      expect(
        threads.find((one) => one.size === size)?.standards.map((one) => one.standard),
        `${tool} ${size}`,
      ).toContain(text(row, 'standard'));
      const heads = (await ask('identify', '--thread', size.startsWith('M') ? size : `${size} UNC`)).at(
        'thread.heads',
      );
      expect(heads, size).toEqual(
        expect.arrayContaining([
          expect.objectContaining({ standard: text(row, 'standard'), family: text(row, 'family') }),
        ]),
      );
    }
  });
});

describe('strengths', () => {
  it('of every class and grade, and every proof load', async () => {
    for (const row of rowsOf('proof_loads')) {
      const grade = text(row, 'grade_or_class');
      const name = text(row, 'system') === 'SAE J429' ? `grade ${grade}` : grade;
      const quantity = text(row, 'quantity');
      if (quantity.startsWith('proof_load')) {
        const said = await ask('torque', '--thread', text(row, 'size_or_range'), '--class', name);
        expect(said.number('strength.proofLoadN')).toBe(num(row, 'value'));
        expect(said.number('reference.proofLoadN')).toBe(num(row, 'value'));
        continue;
      }
      const kind = quantity.startsWith('proof')
        ? 'proof'
        : quantity.startsWith('tensile')
          ? 'tensile'
          : 'yield';
      const printed = (await ask('identify', '--mark', name)).at('mark.strengths') as {
        quantity: string;
        range: string;
        valueMPa: number;
        valuePsi: number;
      }[];
      const own = printed.find((one) => one.quantity === kind && one.range === text(row, 'size_or_range'));
      expect(own?.[text(row, 'unit') === 'psi' ? 'valuePsi' : 'valueMPa'], `${name} ${quantity}`).toBe(
        num(row, 'value'),
      );
    }
  });
});

describe('O-rings', () => {
  it('of AS568, by number and by measure', async () => {
    for (const row of rowsOf('as568_orings')) {
      const said = await ask('oring', '--dash', text(row, 'dash'));
      expect(said.number('ring.insideIn')).toBe(num(row, 'id_in'));
      expect(said.number('ring.insideToleranceIn')).toBe(num(row, 'id_tol_in'));
      expect(said.number('ring.sectionIn')).toBe(num(row, 'cs_in'));
      expect(said.number('ring.sectionToleranceIn')).toBe(num(row, 'cs_tol_in'));
      const measured = await ask(
        'oring',
        '--inside',
        `${text(row, 'id_in')} in`,
        '--section',
        `${text(row, 'cs_in')} in`,
      );
      const names = (measured.at('candidates') as { name: string }[]).map((one) => one.name);
      expect(names.slice(0, 3)).toContain(`AS568-${text(row, 'dash')}`);
    }
  });

  it('of the metric standards: sections, tolerances, ports', async () => {
    for (const row of rowsOf('metric_orings')) {
      const kind = text(row, 'kind');
      const key = text(row, 'key');
      if (kind === 'class_B_id_tolerance') {
        near(
          (await ask('oring', '--inside', text(row, 'id_mm'))).number('insideToleranceMm'),
          num(row, 'id_tol_mm'),
          4,
          key,
        );
      } else if (kind === 'class_B_cs_tolerance') {
        for (const edge of key.split(' to '))
          expect((await ask('oring', '--section', edge)).number('sectionToleranceMm')).toBe(
            num(row, 'cs_tol_mm'),
          );
      } else if (kind === 'iso6149_port_seal') {
        const said = await ask('oring', '--port', key);
        expect([said.number('ring.insideMm'), said.number('ring.sectionMm')]).toEqual([
          num(row, 'id_mm'),
          num(row, 'cs_mm'),
        ]);
      } else if (kind === 'common_non_iso_metric_cross_sections') {
        for (const size of key.split(' '))
          expect((await ask('oring', '--section', size)).at('sections')).toEqual(
            expect.arrayContaining([expect.objectContaining({ sectionMm: Number(size) })]),
          );
      } else {
        const sections = (await ask('oring', '--section', text(row, 'cs_mm'))).at('sections') as {
          sectionMm: number;
          standard: string;
        }[];
        const word =
          kind === 'iso3601_cross_section' ? 'ISO 3601-1' : kind === 'jis_cross_section' ? key : 'AS568';
        const own = sections.find((one) => one.standard.includes(word));
        expect(own?.sectionMm, key).toBeCloseTo(num(row, 'cs_mm'), 1);
        if (text(row, 'cs_tol_mm') !== '') expect(own).toMatchObject({ toleranceMm: num(row, 'cs_tol_mm') });
      }
    }
  });
});

/** "1000 gal" and the like: the examples name the unit in the column. */
function mixArgs(row: Row): { readonly args: readonly string[]; readonly path: string } {
  const given = inputsOf(row);
  const group = text(row, 'group');
  const quantity = text(row, 'quantity');
  const litres = [`--capacity`, `${given['total_L'] ?? ''} l`];
  if (group === 'freeze_point_pure')
    return {
      args: ['--freeze', `${given['glycol_wt_percent'] ?? ''} %`, '--family', 'pure', '--by', 'mass'],
      path: 'celsius',
    };
  if (group.startsWith('freeze'))
    return {
      args: ['--freeze', `${given['glycol_vol_percent'] ?? ''} %`],
      path: text(row, 'expected').startsWith('below') ? 'belowCelsius' : 'celsius',
    };
  if (group === 'drain_and_replace')
    return {
      args: [
        ...litres,
        '--present',
        given['present_conc'] ?? '',
        '--target',
        given['target_conc'] ?? '',
        '--replacement',
        given['replacement_conc'] ?? '',
      ],
      path: 'volume',
    };
  if (group === 'repeated_flush')
    return {
      args: [
        ...litres,
        '--remaining',
        given['residual_L'] ?? '',
        '--remaining-strength',
        given['start_conc'] ?? '',
        '--flushes',
        given['flushes'] ?? '',
      ],
      path: 'strength',
    };
  if (group === 'weight_percent_volume' || group === 'weight_to_volume')
    return {
      args: [
        '--mass',
        given['wt_fraction'] ?? '',
        '--gravity',
        given['SG_glycol'] ?? '',
        ...(given['total'] ? ['--capacity', `${given['total']} gal`] : []),
      ],
      path: group === 'weight_to_volume' ? 'volumePercent' : 'glycol',
    };
  return {
    args: [
      ...litres,
      '--remaining',
      given['residual_L'] ?? '',
      '--remaining-strength',
      given['residual_conc'] ?? '',
      '--target',
      given['target_conc'] ?? '',
      '--concentrate',
      given['concentrate_conc'] ?? '',
    ],
    path:
      { concentrate_to_add: 'concentrate', water_to_add: 'water', best_reachable_conc: 'bestStrength' }[
        quantity
      ] ?? quantity,
  };
}

describe('mixes', () => {
  it('come to every worked example', async () => {
    for (const row of rowsOf('mixing_examples')) {
      const { args, path } = mixArgs(row);
      const said = await ask('mix', ...args);
      const expected = Number(text(row, 'expected').replace('below ', ''));
      const slack = text(row, 'tolerance') === '' ? 0 : num(row, 'tolerance');
      expect(Math.abs(said.number(path) - expected), args.join(' ')).toBeLessThanOrEqual(slack);
      if (text(row, 'group') === 'residual_mix')
        expect(said.at('feasible')).toBe(text(row, 'feasible') === 'yes');
    }
  });
});

describe('orders of tightening', () => {
  it('come to every pattern, round and way of undoing', async () => {
    let checked = 0;
    for (const row of rowsOf('tightening_patterns')) {
      const kind = text(row, 'kind');
      const pattern = text(row, 'sequence_or_pattern');
      const low = Number(text(row, 'target_percent_low'));
      const high = Number(text(row, 'target_percent_high'));
      if (kind === 'cross_pattern_sequence') {
        const said = await ask('tighten', '--holes', text(row, 'n_bolts'));
        expect((said.at('order') as string[]).join(' ')).toBe(pattern);
      } else if (kind === 'round') {
        const rounds = (await ask('tighten', '--holes', '8', '--torque', '100 N·m')).at('rounds') as {
          name: string;
          shareRange?: [number, number];
          order: string[];
        }[];
        const around = pattern.startsWith('circular');
        if (around)
          expect(rounds.at(-1)).toMatchObject({
            name: 'once around',
            order: ['1', '2', '3', '4', '5', '6', '7', '8'],
          });
        else
          expect(
            rounds.map((one) => (one.shareRange ?? []).map((share) => Math.round(share * 100))),
          ).toContainEqual([low, high]);
      } else if (kind === 'round_alternative') {
        const other = (await ask('tighten', '--holes', '12')).at('otherRounds') as { shares: number[] }[];
        expect(other.some((one) => one.shares.some((share) => Math.round(share * 100) === high))).toBe(true);
        const told = (await ask('tighten', '--holes', '12', '--rounds', '20 40 80 100')).at('rounds') as {
          share?: number;
        }[];
        expect(told.map((one) => one.share)).toEqual([undefined, 0.2, 0.4, 0.8, 1, 1]);
      } else if (kind === 'loosening') {
        const said = await ask('tighten', '--holes', '8');
        expect((said.at('undoing') as string[]).join(' ')).toBe('1 5 3 7 2 6 4 8');
        expect(said.at('undoingSays')).toContain(
          'a quarter to half a turn at a time, about half of the load first',
        );
      } else if (kind === 'non_circular') {
        const said = await ask('tighten', '--points', '0,0 1,0 2,0 3,0 4,0 0,2 1,2 2,2 3,2 4,2');
        expect(['3', '8']).toContain(said.at('order.0'));
        expect(['3', '8']).not.toContain(said.at('undoing.0'));
      } else if (kind === 'single_bolt_group') {
        const said = await ask('tighten', '--holes', '2', '--torque', '40 N·m');
        expect((said.at('rounds') as unknown[]).length).toBeGreaterThanOrEqual(3);
      } else continue;
      checked += 1;
    }
    expect(checked).toBe(rowsOf('tightening_patterns').length);
  });
});

const sayK = (row: Row): string => text(row, 'example_id').replace(/^K /, '');

/** The command line of one worked example, and where its answer stands. */
function torqueArgs(row: Row): {
  readonly args: readonly string[];
  readonly path: string;
  readonly factor?: number;
} {
  const given = inputsOf(row);
  const unit = text(row, 'unit').replace('.', '·');
  const quantity = text(row, 'quantity');
  const diameter = given['d_in'] ? `${given['d_in']} in` : `${given['d_mm'] ?? ''} mm`;
  switch (text(row, 'group')) {
    case 'nut_factor':
      return { args: ['torque', '--lubrication', sayK(row)], path: 'k' };
    case 'torque_short_form': {
      if (given['joint']) return { args: ['torque', '--joint', given['joint']], path: 'share' };
      if (given['Sp_psi'])
        return {
          args: [
            'torque',
            '--proof',
            `${given['Sp_psi']} psi`,
            '--area',
            `${given['As_in2'] ?? ''} in²`,
            '--share',
            given['fraction'] ?? '',
          ],
          path: 'preloadLbf',
        };
      const load = given['F_N'] ? `${given['F_N']} N` : `${given['F_lbf'] ?? ''} lbf`;
      const asked = quantity === 'preload' ? ['--torque', `${given['T_Nm'] ?? ''} N·m`] : ['--preload', load];
      const path = { preload: 'preloadN', N·m: 'torqueNm', lbf·in: 'torqueLbfIn', lbf·ft: 'torqueLbfFt' };
      return {
        args: ['torque', '--diameter', diameter, '--k', given['K'] ?? '', ...asked],
        path: path[(quantity === 'preload' ? 'preload' : unit) as keyof typeof path],
      };
    }
    case 'extension': {
      const inverse = given['S'] !== undefined;
      const long = unit === 'N·m' ? 'mm' : 'in';
      return {
        args: [
          'extension',
          inverse ? '--set' : '--torque',
          `${given['S'] ?? given['T'] ?? ''} ${unit}`,
          '--wrench',
          `${given['L'] ?? ''} ${long}`,
          '--extension',
          `${given['E'] ?? ''} ${long}`,
          '--angle',
          given['angle_deg'] ?? '0',
        ],
        path: inverse ? 'appliedTorque' : 'setting',
      };
    }
    case 'prevailing_torque': {
      const wanted = given['desired'] ?? `${given['minimum'] ?? ''} to ${given['maximum'] ?? ''}`;
      return {
        args: ['torque', '--torque', `${wanted} lbf·in`, '--drag', `${given['drag'] ?? ''} lbf·in`],
        path: 'reading',
      };
    }
    case 'ac43_table_7_1':
      return {
        args: ['torque', '--thread', given['thread'] ?? ''],
        path: quantity.startsWith('maximum')
          ? 'aircraft.mostLbfIn'
          : quantity.includes('shear')
            ? 'aircraft.shearLbfIn.0'
            : 'aircraft.tensionLbfIn.0',
      };
    case 'ac43_table_7_2':
      return { args: ['torque', '--thread', given['thread'] ?? ''], path: 'leastDragLbfIn' };
    case 'unit_conversion':
      return {
        args: [
          'units',
          '--value',
          given['value'] ?? '',
          '--from',
          given['from'] ?? '',
          '--to',
          given['to'] ?? '',
        ],
        path: 'value',
      };
    case 'vdi2230_scatter':
      return {
        args: ['torque', '--preload', `${given['FM_max_kN'] ?? ''} kN`, '--scatter', given['alpha_A'] ?? ''],
        path: 'lowestPreloadN',
        factor: 1000,
      };
    default:
      return {
        args: [
          'torque',
          '--thread',
          given['thread'] ?? '',
          '--class',
          given['class'] ?? '',
          '--mu',
          given['mu_total'] ?? '',
          '--share',
          given['utilisation'] ?? '0.9',
        ],
        path: unit === 'kN' ? 'full.preloadN' : 'full.torqueNm',
        ...(unit === 'kN' ? { factor: 1000 } : {}),
      };
  }
}

/** Rows whose printed figure is of another basis, or differs between copies, as their notes say. */
function slackOf(row: Row): number {
  if (text(row, 'group') === 'older_basis_mu_0.14') return 13;
  if (text(row, 'example_id') === 'M5 A class 50') return 7;
  return text(row, 'tolerance_percent') === '' ? 1.5 : Math.max(1e-9, num(row, 'tolerance_percent'));
}

describe('torque, extension and units', () => {
  it('come to every worked example', async () => {
    const rows = rowsOf('torque_examples');
    expect(rows.length).toBeGreaterThan(300);
    for (const row of rows) {
      const { args, path, factor } = torqueArgs(row);
      const said = await ask(...args);
      expect(said.code, `${args.join(' ')}: ${JSON.stringify(said.all).slice(0, 200)}`).toBe(0);
      near(said.number(path), num(row, 'expected_low') * (factor ?? 1), slackOf(row), args.join(' '));
      const high = path.replace(/\.0$/, '.1').replace(/^reading$/, 'readingHigh');
      if (text(row, 'expected_high') !== text(row, 'expected_low'))
        near(said.number(high), num(row, 'expected_high'), slackOf(row), args.join(' '));
    }
  });
});
