import { refuse, good, type Basis, type Outcome } from './outcome.ts';

type ElastomerFamily = 'NBR' | 'HNBR' | 'FKM' | 'EPDM' | 'VMQ' | 'CR';

/** How a family of rubber stands in a fluid. */
type Suits = 'usual' | 'possible' | 'never';

interface FluidRow {
  readonly fluid: string;
  readonly words: RegExp;
  readonly usual: readonly ElastomerFamily[];
  readonly never: readonly ElastomerFamily[];
  readonly why: string;
}

const FAMILIES: readonly ElastomerFamily[] = ['NBR', 'HNBR', 'FKM', 'EPDM', 'VMQ', 'CR'];

/** Common practice of the seal trade, from memory, no table behind it: a caution, never a choice. */
const FLUIDS: readonly FluidRow[] = [
  {
    fluid: 'brake fluid on a glycol base',
    words: /brake|dot\s*[345]|clutch fluid/,
    usual: ['EPDM'],
    never: ['NBR', 'HNBR', 'FKM'],
    why: 'glycol brake fluid swells the oil rubbers, and mineral oil ruins EPDM',
  },
  {
    fluid: 'mineral oil',
    words: /mineral|engine oil|hydraulic oil|gear|grease|\boil\b|atf/,
    usual: ['NBR', 'HNBR', 'FKM'],
    never: ['EPDM'],
    why: 'EPDM swells in mineral oil and grease, assembly grease included',
  },
  {
    fluid: 'petrol and diesel fuel',
    words: /petrol|gasoline|diesel|fuel|kerosene/,
    usual: ['FKM', 'NBR'],
    never: ['EPDM', 'VMQ', 'CR'],
    why: 'fuels with alcohol swell NBR; EPDM, silicone and CR swell in any fuel',
  },
  {
    fluid: 'water and glycol',
    words: /water|glycol|antifreeze|coolant/,
    usual: ['EPDM', 'NBR'],
    never: [],
    why: 'hot water and steam harden NBR; FKM suits only where its maker says so',
  },
  {
    fluid: 'steam',
    words: /steam/,
    usual: ['EPDM'],
    never: ['NBR', 'CR', 'VMQ'],
    why: 'steam hardens NBR and breaks silicone down',
  },
  {
    fluid: 'phosphate-ester hydraulic fluid',
    words: /phosphate|ester/,
    usual: ['EPDM'],
    never: ['NBR', 'HNBR', 'CR'],
    why: 'phosphate esters dissolve the oil rubbers',
  },
  {
    fluid: 'refrigerant',
    words: /refrigerant|r-?134|r-?12\b/,
    usual: ['HNBR', 'CR'],
    never: [],
    why: 'the oil in the circuit decides as much as the refrigerant',
  },
  {
    fluid: 'air',
    words: /\bair\b|vacuum/,
    usual: ['NBR', 'FKM', 'EPDM', 'VMQ'],
    never: [],
    why: 'EPDM only where the air carries no oil',
  },
];

export interface ElastomerCaution extends Basis {
  readonly fluid: string;
  readonly families: readonly { readonly family: ElastomerFamily; readonly suits: Suits }[];
  readonly sentence: string;
}

/** Which families of rubber are usual, possible or never in a fluid: a caution, from common practice. */
export function elastomerCaution(fluid: string): Outcome<ElastomerCaution> {
  const bare = fluid.trim().toLowerCase();
  const row = FLUIDS.find((f) => f.words.test(bare));
  if (!row) {
    return refuse(
      'oring.fluid',
      'a fluid such as mineral oil, fuel, brake fluid, water and glycol, steam or air',
      fluid.trim(),
    );
  }
  const suits = (family: ElastomerFamily): Suits =>
    row.usual.includes(family) ? 'usual' : row.never.includes(family) ? 'never' : 'possible';
  const never = row.never.length > 0 ? ` Not ${row.never.join(', ')}.` : '';
  return good({
    fluid: row.fluid,
    families: FAMILIES.map((family) => ({ family, suits: suits(family) })),
    sentence: `In ${row.fluid}, ${row.usual.join(', ')} is usual.${never}`,
    formula: 'looked up by fluid',
    inputs: [fluid.trim()],
    source: 'common practice, no source (from memory)',
    limits: [`${row.why}; temperature and additives change it.`],
    cautions: [
      "Take the seal maker's list for the fluid and temperature at hand; an unknown ring is not proof of the right rubber.",
    ],
  });
}
