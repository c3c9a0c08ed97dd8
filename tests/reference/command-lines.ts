import { inputsOf, text, type Row } from './rows.ts';

/** "1000 gal" and the like: the examples name the unit in the column. */
export function mixArgs(row: Row): { readonly args: readonly string[]; readonly path: string } {
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

const sayK = (row: Row): string => text(row, 'example_id').replace(/^K /, '');

/** The command line of one worked example, and where its answer stands. */
export function torqueArgs(row: Row): {
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
