import type { Bench } from './bench.ts';
import {
  belts,
  capFour,
  capThree,
  endPlate,
  feet,
  inlet,
  mainsLocked,
  plugs,
  pressureLine,
  pulley,
  reliefValve,
  rotorLeft,
  rotorRight,
  tensioner,
} from './specials-drive.ts';
import { gearCover, gearLeft, gearOil, gearRight, hoseBracket } from './specials-gear.ts';
import { washers } from './special-help.ts';

/** What a removal of the story holds beside its entry lines: names, own lengths, what is shared, what stays inside. */
type Special = (bench: Bench) => Promise<void>;

export const SPECIALS: Readonly<Record<string, Special>> = {
  'Mains locked out at the dryer’s isolator': mainsLocked,
  'Plugs and earth lead': plugs,
  'Belt guard': async (bench) => washers(bench, 'Belt guard'),
  'V-belts, matched pair': belts,
  'Pulley and taper bush': pulley,
  'Belt tensioner': tensioner,
  'Inlet elbow': inlet,
  'Relief valve': reliefValve,
  'Pressure line, moved aside': pressureLine,
  'Gear oil': gearOil,
  'Hose bracket, moved aside': hoseBracket,
  'Gear cover': gearCover,
  'Gear, right': gearRight,
  'Gear, left': gearLeft,
  'Feet to base frame': feet,
  'Bearing cap 3': capThree,
  'Bearing cap 4': capFour,
  'End plate': endPlate,
  'Rotor, right': rotorRight,
  'Rotor, left': rotorLeft,
};
