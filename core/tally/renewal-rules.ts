/**
 * What must be renewed when it has been off: one list, one row each.
 * Sources: FAA AC 43.13-1B chapter 7 (paragraphs 7-38, 7-40, 7-64, 7-122) and AC 43.13-1A; TB 43-0218;
 * TM 55-2840-251-23; TM 5-5420-280-23&P; TM 10-3930-643; TM 9-6115-604-34; NAVEDTRA 14008 and 14014; vehicle makers'
 * service data (unnamed). "verified-n" counts the documents read that state the rule; "memory" means none was read.
 * The sources disagree: self-locking nuts may be used again by the FAA when the prevailing torque holds, military
 * manuals discard them, vehicle makers mostly replace; split lock washers are discarded by military manuals, used
 * again by many others. A maker's instruction overrides every row.
 */
const TABLE = `
cotter-pin | cotter pin (split pin) | never reuse | fit a new one of the same diameter and material | bent legs have been work-hardened and crack or loosen when bent again | FAA AC 43.13-1B par. 7-38; TB 43-0218; TM 55-2840-251-23 | verified-4 | 
safety-wire | safety wire (lockwire) | never reuse | new wire for every application | already twisted and yielded, breaks when twisted again | FAA AC 43.13-1B par. 7-38; NAVEDTRA 14014; TM 55-2840-251-23 | verified-4 | 
lock-washer | lock washer, split (spring) | never reuse | replace | flattened, spring and edge bite lost | TB 43-0218; TM 55-2840-251-23; TM 5-5420-280-23&P | verified-3 | military manuals discard them; many civil manuals leave it to the reader
tab-washer | tab washer, key washer, lock plate | never reuse | use once; a plate with several unused tabs is still discarded under these manuals | the tab cracks when bent a second time | TM 55-2840-251-23 (used once only) | verified-1 | some makers allow an unused tab of a multi-tab plate
cup-washer | cup washer (crimped into nut slot) | never reuse | replace | deformed when locked | TM 55-2840-251-23 | verified-1 | 
nylon-insert-nut | nylon-insert self-locking nut | reuse only if | cannot be run past the insert by hand and its prevailing torque is at or above the table minimum; not in a rotating or hot place | the insert is worn by the thread; the locking torque falls with each use | FAA AC 43.13-1B par. 7-64, 7-122c and table 7-2; AC 43.13-1A | verified-2 | many vehicle and machine makers simply say replace; some military manuals discard locking nuts on removal
all-metal-lock-nut | all-metal self-locking nut (prevailing torque) | reuse only if | prevailing torque is at or above the table minimum; thread undamaged | the deformed section relaxes | FAA AC 43.13-1B par. 7-122c and table 7-2; TM 9-6115-604-34 table 1-3 | verified-2 | TB 43-0218 discards self-locking nuts on removal: the stricter rule wins where it applies
self-locking-nut-on-turning-part | self-locking nut on a part that turns against it | never use | use a castle nut with cotter pin or lockwire | self-locking nuts are not allowed where bolt or nut rotates | FAA AC 43.13-1B par. 7-64 | verified-1 | 
fibre-insert-lock-nut | fibre-insert lock nut | reuse only if | cannot be turned all the way on by fingers | the fibre has lost its grip otherwise | FAA AC 43.13-1A | verified-1 | older text
pal-nut | pal nut (stamped jam nut, speed nut) | never reuse | replace | spring tongues take a set | FAA AC 43.13-1B par. 7-122d | verified-1 | 
staked-nut | staked nut (collar or peened) | never reuse | new nut, stake in a fresh place on the shaft slot | metal displaced into the slot is torn out on removal | common practice, no source | memory | some wheel-bearing nuts are reusable if the slot of the shaft falls on an unused part of the collar: maker figure only
torque-plus-angle-bolt | torque-to-yield or torque-plus-angle bolt | reuse only if | maker permits and length or thread-diameter measurement is within the limit; else new | tightened into the plastic range, permanently stretched; a second tightening gives less clamp and may break | vehicle maker service data: head bolts not reused in most; one maker allows a diameter-difference check | verified-1 | if the maker is silent treat as never reuse
bolt-tightened-below-yield | bolt tightened below yield | inspect | look for thread damage, stretch, bent shank, corrosion; discard if any | preload below yield leaves no permanent stretch | FAA AC 43.13-1B par. 7-40 note (checks before reuse); TB 43-0218 (inspect; discard damaged threads or pitting) | verified-2 | 
structural-bolt | preloaded structural bolt assembly (high strength) | never reuse | once fully tightened and released | the nut threads and the bolt have been yielded at assembly | common rule in structural bolting specifications (ASTM A490 never, A325 black only if allowed) | memory | plain black A325 may be reused with approval of the engineer
o-ring | O-ring | never reuse | new ring, compound and size recorded | compression set, cuts from fitting and from edges | TM 10-3930-643 (preformed packings); TM 5-5420-280-23&P | verified-2 | 
bonded-seal | bonded seal (metal washer with rubber lip) | never reuse | replace | rubber takes a set and the metal face is marked | common practice, no source | memory | some makers allow reuse if undamaged
crush-washer | crush washer (copper, aluminium, folded) | never reuse | replace | the soft metal has been flattened to the joint face and hardened | common practice, no source | memory | solid copper can be annealed and used again, folded ones cannot
annealed-copper-washer | copper washer (solid), annealed | reuse only if | annealed, flat, unmarked, not thinner than the limit | annealing restores softness | common practice, no source | memory | most makers say new
brake-banjo-washers | brake banjo washers | never reuse | two new ones per fitting | leak risk on a safety system | common practice, no source | memory | makers of brake systems state this without exception
brake-flare | brake hose or line flare | inspect | cone not scored, not overtightened | metal seat is plastically formed | common practice, no source | memory | double flares may reseat; replace if leaking
flat-gasket | flat gasket, general | never reuse | clean both faces and fit new | fibres have been compressed to shape and bonded to the faces | TM 10-3930-643; TM 5-5420-280-23&P (gaskets discarded) | verified-2 | vehicle service data: do not reuse unless stated
paper-gasket | paper or fibre gasket | never reuse | new | tears on separation | common practice, no source | memory | 
head-gasket | head gasket | never reuse | new; check face flatness | crushed fire ring and bonded coating | common practice, no source | memory | joint face flatness limit from the maker
spiral-wound-gasket | spiral-wound gasket | never reuse | new | filler extruded and windings compressed | common flange practice (ASME PCC-1 text: new gasket for each assembly) | memory | 
ring-type-joint | ring-type joint (metal ring) | reuse only if | not deformed, groove and ring inspected; else new | metal ring work-hardened | common flange practice | memory | some specifications: single use
moulded-gasket | elastomer molded gasket (thick, in a groove) | inspect | no cut, no flattening more than the maker limit, still proud of the groove | keeps elasticity longer than paper | common practice, no source | memory | maker rule wins
liquid-gasket | liquid gasket (RTV), anaerobic sealant | never reuse | scrape, degrease, new bead | cured sealant cannot bond twice | common practice, no source | memory | 
lip-seal | lip seal (rotary shaft seal) | never reuse | new, lip greased, sleeve over splines | the lip is cut or set by removal; the shaft has a wear track | common practice, no source | memory | inspect the shaft track; change depth or sleeve
valve-stem-seal | valve stem seal | never reuse | new | pulled off under load | common practice, no source | memory | 
circlip | circlip, retaining ring (internal/external) | inspect | not over-opened or over-closed, no twist, square edges, fully seated in the groove; replace if bent | opened beyond its range takes a permanent set | TM 55-2840-251-23 (inspect that it is not over-stressed and seats fully) | verified-1 | some makers: replace every time, e.g. drive-shaft rings
e-clip | E-clip | inspect | spring tight in the groove; replace if loose | legs open with every removal | common practice, no source | memory | 
spiral-snap-ring | spiral snap ring | inspect | not stretched | same as circlip | common practice, no source | memory | 
drive-shaft-snap-ring | wire clip, drive-shaft snap ring | replace | new | retention force falls | common maker instruction | memory | 
roll-pin | roll pin (spring pin) | inspect | still sprung larger than the hole; replace if it slides in | loses spring force when driven out | common practice, no source | memory | often replaced
taper-pin | taper pin, solid dowel | inspect | not scored, tight in its hole | hole wear | common practice, no source | memory | hole must be checked too
rivet | rivet (solid, blind, semi-tubular) | never reuse | drill out and fit new | shank is formed in place | common practice, no source | memory | 
plastic-push-rivet | plastic push rivet | inspect | centre pin and legs intact | legs crack, pin breaks on removal | common practice, no source | memory | have spares; age-embrittled ones break
trim-clip | plastic trim clip, christmas-tree clip | inspect | legs intact | breaks on removal | common practice, no source | memory | 
spring-clamp | spring clamp (constant tension) | reuse only if | not spread beyond its marked limit, no corrosion or crack, put back on its old mark | loses tension when overspread | common practice, no source | memory | 
worm-drive-clamp | worm-drive clamp | reuse only if | band not stretched, threads clean, screw turns freely | band slots wear | common practice, no source | memory | place screw where it can be reached; check torque after first warm-up
crimp-clamp | crimp clamp (ear clamp) | never reuse | new | plastically deformed to close | common practice, no source | memory | 
crimped-fuel-hose | fuel hose with crimped ferrule | never reuse | new hose assembly | ferrule formed | common practice, no source | memory | 
threadlocked-bolt | threadlocked bolt (liquid or dry patch) | reuse only if | old compound cleaned off both threads, bolt undamaged, new compound applied | cured compound does not lock twice | common practice, no source | memory | microencapsulated patch bolts are replaced in most manuals
patch-bolt | bolt with dry sealing or locking patch | never reuse | new bolt, unless the maker allows fresh liquid compound | the patch works once or a few times only | common practice, no source | memory | 
thread-insert | thread insert (wire) | inspect | tang removed, seated flush, no coil jumped; replace if it moves | coil may back out with the bolt | common practice, no source | memory | 
wedge-locking-washers | wedge-locking washer pair | reuse only if | no wear on cams or serrations, used with lubricated bolt, pairs kept together | works by cam geometry not by deformation | common practice, no source | memory | not on damaged seats
serrated-flange | serrated flange bolt or nut | inspect | serrations still sharp; face marked is normal | teeth wear | common practice, no source | memory | not on soft coated seats again
ball-joint-castellated-nut | ball-joint / tie-rod castellated nut | reuse only if | thread and slots good; always new pin | the pin is the lock | FAA AC 43.13-1B par. 7-38 for the pin | verified-1 | many makers: new self-locking nut
wheel-hub-nut | wheel hub (axle) nut, staked or torque-to-yield | never reuse | new | clamps bearing by a set preload | common practice, no source | memory | maker rule: most demand new
press-fit-bearing | press-fit bearing | never reuse | if force was passed through the rolling elements or it was heated | raceway dented | common practice, no source | memory | ring pushed by its own ring may be reused if inspected
drain-plug-washer | gasketed drain plug washer | never reuse | new each oil change | see crush washer | common practice, no source | memory | many users turn it over once; not recommended
oil-filter | oil filter | never reuse | new | element loaded, seal set | common practice, no source | memory | 
fuse | fuse (blown) | never reuse | replace with same rating after finding the cause | element melted | common practice, no source | memory | 
heat-shrink-or-solder-sleeve | heat-shrink or solder sleeve | never reuse | new | shrunk in place | common practice, no source | memory | 
thermal-paste-or-pad | thermal paste or pad | never reuse | clean off, new paste; pads replaced if torn | pumped out and air trapped on reopening | common practice, no source | memory | 
adhesive-gasket | adhesive gasket, pressure-sensitive tape | never reuse | clean and apply new | adhesive contaminated | common practice, no source | memory | 
breakaway-bolt | breakaway (shear) bolt | never reuse | new | head was sheared off to set torque | common practice, no source | memory | 
anti-seize-bolt | bolt coated with anti-seize | inspect | clean and re-apply; note the lower torque | friction falls, so K falls (about 0.12) | Shigley torque-factor table | verified-2 | never torque a lubricated joint to a dry value
rubber-seal | seal, preformed packing or rubber seal (hydraulic) | never reuse | new, lubricated with system fluid | as for O-ring | TM 10-3930-643; TM 5-5420-280-23&P | verified-2 | 
drive-belt | drive belt | inspect | cracks, glazing, stretch; mark the direction of travel | reversing direction worn belts shortens life | common practice, no source | memory | timing belts: new when removed, in many makers
timing-belt | timing belt | never reuse | new when removed unless within its interval and the maker allows; tensioner new too | cord damaged by folding | common practice, no source | memory | 
coolant | coolant (drained) | reuse only if | drained coolant may be kept for refill only if clean, recent and same type and the maker allows | inhibitors depleted; contamination | common practice, no source | memory | record volume drained and what went in
drained-oil | drained engine or gear oil | never reuse | new | contaminated, oxidised, level unknown | common practice, no source | memory | measure the volume drained
drained-brake-fluid | drained brake fluid | never reuse | new sealed container | takes up water from air | common practice, no source | memory | never mix DOT 5 (silicone) with the glycol types
filter-drier | desiccant / filter drier in a refrigerant circuit | never reuse | new if open to air more than the maker limit | absorbs moisture | common practice, no source | memory | refrigerant to be recovered as the law requires
`;

const RULES = ['never reuse', 'never use', 'replace', 'reuse only if', 'inspect'] as const;

/** One row of the list. `check` is the condition under which it may go back, or what to do instead. */
export interface RenewalRule {
  readonly id: string;
  readonly item: string;
  readonly rule: (typeof RULES)[number];
  readonly check: string;
  readonly reason: string;
  readonly source: string;
  readonly confidence: string;
  readonly note: string;
}

export const RENEWAL_RULES: readonly RenewalRule[] = TABLE.trim().split('\n').map(parseRow);

function parseRow(line: string): RenewalRule {
  const [
    id = '',
    item = '',
    rule = '',
    check = '',
    reason = '',
    source = '',
    confidence = '',
    note,
    ...rest
  ] = line.split('|').map((cell) => cell.trim());
  const known = RULES.find((word) => word === rule);
  if (known === undefined || note === undefined || rest.length > 0 || confidence === '') {
    throw new Error(`Expected eight cells with a known rule, got "${line}".`);
  }
  return { id, item, rule: known, check, reason, source, confidence, note };
}
