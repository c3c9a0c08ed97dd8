import { describe, expect, it } from 'vitest';
import { ask, near } from './ask.ts';
import { num, rowsOf, text } from './rows.ts';

/** Every row of every outside table, asked as somebody at a command line asks it. */

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
