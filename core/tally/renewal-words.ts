/**
 * Both trades' words for what the renewal list names. One line: rule, family, qualifiers of which one must be said
 * ("-" none), and the noun that must end the name ("rocker cover gasket" is a gasket, "gasket scraper" is none).
 * The first line that fits wins, so the narrow ones stand first. Common practice, no source.
 */
const TABLE = `
cotter-pin | pin | - | split pin, cotter pin, split cotter
roll-pin | pin | - | roll pin, spring pin, tension pin
taper-pin | pin | - | taper pin, dowel pin, dowel
safety-wire | pin | - | safety wire, lock wire, lockwire, locking wire
wedge-locking-washers | washer | wedge | washer, locking washer, lock washer, washer pair
tab-washer | washer | - | tab washer, key washer, lock plate, locking plate, lock tab, locking tab, tab plate, lockplate
cup-washer | washer | crimped, locking, staked | cup washer
lock-washer | washer | - | lock washer, spring washer, split washer, locking washer
drain-plug-washer | washer | drain plug, sump plug, oil plug | washer, gasket, seal, sealing ring
annealed-copper-washer | washer | annealed | copper washer, washer, copper ring
brake-banjo-washers | washer | brake | banjo washer, banjo seal
bonded-seal | washer | bonded | seal, washer, sealing washer
crush-washer | washer | copper, aluminium, aluminum, crush, folded, sealing, banjo | washer, sealing washer, sealing ring, ring
ball-joint-castellated-nut | nut | ball joint, tie rod, track rod, steering | castle nut, castellated nut, slotted nut, nut castle
wheel-hub-nut | nut | hub, axle, drive shaft, driveshaft, wheel bearing | nut
staked-nut | nut | staked, peened | nut
pal-nut | nut | - | pal nut, speed nut, stamped jam nut, stamped nut
fibre-insert-lock-nut | nut | fibre, fiber | nut, insert nut, lock nut
all-metal-lock-nut | nut | all metal, prevailing torque, deformed thread | nut, lock nut, nut all metal lock
nylon-insert-nut | nut | - | nyloc, nyloc nut, nylock nut, nylon nut, nylon insert nut, nylon insert lock nut, nylon lock nut, nylon insert, polymer insert nut, self locking nut
breakaway-bolt | bolt | shear, breakaway, snap off | bolt, screw
torque-plus-angle-bolt | bolt | - | stretch bolt, torque to yield bolt, angle tightened bolt, yield bolt, stretch screw, tty bolt
structural-bolt | bolt | structural | bolt, bolt assembly
patch-bolt | bolt | patch, patched, micro encapsulated, microencapsulated, pre coated, precoated | bolt, screw
threadlocked-bolt | bolt | threadlocked, thread locked, glued | bolt, screw, stud
serrated-flange | bolt | serrated, serrated flange, ribbed flange | bolt, nut, screw
serrated-flange | nut | serrated, serrated flange, ribbed flange | nut
drive-shaft-snap-ring | ring | drive shaft, driveshaft, half shaft, cv joint | snap ring, circlip, wire clip, retaining ring
spiral-snap-ring | ring | spiral | snap ring, retaining ring, ring, circlip
e-clip | ring | - | e clip, e ring, eclip
circlip | ring | - | circlip, snap ring, retaining ring, securing ring
plastic-push-rivet | rivet | push, plastic, expanding, scrivet | rivet, push rivet
rivet | rivet | - | rivet
spring-clamp | clamp | spring, constant tension | clamp, hose clamp, hose clip, clip, band clamp
worm-drive-clamp | clamp | worm, worm drive, screw | clamp, hose clamp, hose clip, clip
crimp-clamp | clamp | ear, crimp, crimped, pinch | clamp, hose clamp, clip, hose clip
trim-clip | clip | trim, christmas tree, fir tree, panel, plastic, body | clip, fastener
o-ring | seal | - | o ring, oring
valve-stem-seal | seal | valve stem, valve | seal
lip-seal | seal | lip, shaft, oil, rotary, crankshaft, camshaft, radial | seal
bonded-seal | seal | bonded | seal
head-gasket | seal | head | gasket
spiral-wound-gasket | seal | spiral wound | gasket
ring-type-joint | seal | - | ring type joint, ring joint, ring joint gasket
liquid-gasket | seal | - | liquid gasket, liquid sealant, silicone sealant, anaerobic sealant, rtv, rtv sealant
paper-gasket | seal | paper, fibre, fiber, cork | gasket, washer
moulded-gasket | seal | moulded, molded, rubber, elastomer | gasket
adhesive-gasket | seal | adhesive, self adhesive, sticky | gasket, tape
flat-gasket | seal | - | gasket
rubber-seal | seal | - | rubber seal, hydraulic seal, piston seal, packing, preformed packing, square ring
crimped-fuel-hose | joint | crimped, ferrule | fuel hose, fuel line
brake-flare | joint | brake | pipe, line, hose, flare, union, pipe union
oil-filter | part | oil | filter, filter element, filter cartridge, element
filter-drier | part | - | filter drier, receiver drier, desiccant, desiccant bag
timing-belt | part | timing, cam, toothed | belt
drive-belt | part | - | drive belt, v belt, vee belt, fan belt, ribbed belt, poly v belt, auxiliary belt, alternator belt, belt
press-fit-bearing | part | press fit, press fitted, pressed in, pressed | bearing
fuse | part | blown | fuse
thread-insert | part | - | thread insert, wire insert, wire thread insert
heat-shrink-or-solder-sleeve | part | - | heat shrink, heat shrink sleeve, shrink sleeve, shrink tube, solder sleeve
thermal-paste-or-pad | part | - | thermal paste, thermal pad, heat sink paste, heat sink compound
coolant | fluid | - | coolant
drained-brake-fluid | fluid | - | brake fluid, clutch fluid
drained-oil | fluid | engine, gear, gearbox, motor, transmission | oil
`;

/** What a kind of thing can be at all: words about a gasket in the line of a bolt are about another thing. */
export type Family =
  | 'pin'
  | 'washer'
  | 'nut'
  | 'bolt'
  | 'ring'
  | 'rivet'
  | 'clamp'
  | 'clip'
  | 'seal'
  | 'joint'
  | 'part'
  | 'fluid';

export interface RenewalWords {
  readonly ruleId: string;
  readonly family: string;
  readonly qualifiers: readonly string[];
  readonly nouns: readonly string[];
}

export const RENEWAL_WORDS: readonly RenewalWords[] = TABLE.trim()
  .split('\n')
  .map((line) => {
    const [ruleId = '', family = '', qualifiers = '', nouns = ''] = line
      .split('|')
      .map((cell) => cell.trim());
    return { ruleId, family, qualifiers: list(qualifiers), nouns: list(nouns) };
  });

function list(cell: string): string[] {
  return cell === '-' ? [] : cell.split(',').map((word) => word.trim());
}
