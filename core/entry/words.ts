/**
 * The words that an entry line understands, both trades' and both sides of the ocean.
 * A line of a table reads "sense = word, two words, another"; hyphens in what is typed count as spaces.
 * The words name kinds of things; a maker's name is in only where the trade uses it as the word for the thing.
 */

export const FASTENERS = `
bolt = bolt, capscrew, cap screw, hexbolt
screw = screw, machine screw, thumbscrew, thumb screw
set screw = set screw, setscrew, grub screw, grubscrew, grub
stud = stud
nut = nut
washer = washer, plain washer, flat washer
spring washer = spring washer, lock washer, tab washer
sealing washer = sealing washer, copper washer, crush washer, bonded washer, banjo washer
spacer = spacer, distance piece, distance tube
clip = clip, spring clip, trim clip, christmas tree clip, fir tree clip
push rivet = push rivet, push pin, plastic rivet, expanding rivet
rivet = rivet, blind rivet, pop rivet
pin = pin
split pin = split pin, cotter pin, cotter
roll pin = roll pin, spring pin, tension pin, sellock pin
dowel pin = dowel pin, dowel
taper pin = taper pin
clevis pin = clevis pin
R-clip = r clip, hairpin clip, hitch pin
circlip = circlip, snap ring, snapring, retaining ring
E-clip = e clip, e ring
clamp = clamp, hose clamp, hose clip, jubilee clip, worm drive clip
cable tie = cable tie, zip tie, tie wrap
key = key, woodruff key, shaft key, feather key, gib key, parallel key
banjo bolt = banjo bolt, banjo
wood screw = wood screw, woodscrew
self-tapping screw = self tapping screw, self tapper, tapping screw, self tap screw
unspecified = fastener
`;

export const FASTENERS_WITH_HEAD = `
nut:nyloc = nyloc, nyloc nut, nylock, nylock nut, nylon insert nut
nut:castle = castle nut, castellated nut, slotted nut
nut:thin = thin nut, half nut, jam nut
nut:domed = dome nut, domed nut, acorn nut
nut:wing = wing nut, wingnut
nut:flange = flange nut, flanged nut
nut:all-metal lock = all metal lock nut, stover nut
bolt:flange = flange bolt, flanged bolt
bolt:eye = eye bolt, eyebolt
bolt:coach = coach bolt, carriage bolt
bolt:shoulder = shoulder bolt, stripper bolt
screw:shoulder = shoulder screw
screw:wing = wing screw
`;

export const STACK = `
washer = washer, plain washer, flat washer
spring washer = spring washer, lock washer
spacer = spacer, distance piece, distance tube
bush = bush, bushing
nut = nut
sealing washer = sealing washer, copper washer, crush washer, bonded washer
lock nut = lock nut, locknut, jam nut, nyloc, nyloc nut, nylock nut, nylon insert nut
bolt = bolt
screw = screw
stud = stud
pin = pin, split pin, cotter pin
unspecified = fastener
`;

export const HEADS = `
hex = hex, hexagon, hex head, hexagon head, hex headed
flange = flange, flanged, flange head, hex flange, flange hex, flanged hex, hex flanged
socket cap = socket cap, socket head, cap head, shcs, socket head cap, caphead
button = button head, button
countersunk = countersunk, countersunk head, csk, flat head, countersink
pan = pan head, pan
cheese = cheese head, fillister head
round = round head, mushroom head
square = square head
wing = wing
knurled = knurled, knurled head
T-head = t head, tee head
coach = coach head
eye = eye head
shoulder = shoulder head
headless = headless
`;

export const DRIVES = `
hex socket = hex key, allen key, allen, hex socket, internal hex, hexagon key, hex bit, inhex
hexalobular = hexalobular, torx, six lobe, star drive, star bit
hexalobular external = external hexalobular, external torx, e torx
slotted = slotted, slot, slot head, slotted head, flat blade
cross PH = cross head, crosshead, phillips, cross recess
cross PZ = pozidriv, pozidrive, pozi
triple square = triple square, spline drive, xzn
bi-hex = bi hex, bihex, 12 point, twelve point, double hex
square external = square drive
square socket = square socket, robertson
hex external = external hex
`;

export const CONDITIONS = `
stripped = stripped, thread gone, threads gone
stretched = stretched, necked
cross-threaded = cross threaded, crossthreaded
bent = bent, twisted, buckled
cracked = cracked, split, crack
snapped = snapped, snapped off, sheared, sheared off, broken, broken off, broke, broke off
seized = seized, stuck, frozen
rusted = rusted, rusty, corroded, rotten
rounded = rounded, rounded off, chewed, chewed up
worn = worn, worn out
scored = scored, scratched, grooved
leaking = leaking, weeping, leaks, leaky
perished = perished, hardened, brittle
burnt = burnt, burned, scorched
milky = milky, emulsified
dirty = dirty, clogged, filthy
loose = loose, found loose
damaged = damaged, dented, frayed, torn, chipped, mangled
wrong = wrong, not original, wrong one
`;

export const TREATMENTS = `
threadlock = threadlock, thread lock, threadlocker, thread locker, threadlocked, thread locked, threadlocking, thread locking, thread locking fluid, threadlocking fluid, thread locking compound, locking fluid, locking compound
sealant = sealant, sealed, sealer, sealing paste, thread sealant, thread sealer, gasket sealant, gasket sealer, flange sealant, silicone sealant, silicone, ptfe tape, thread tape, thread sealing tape, sealing compound, gasket compound, jointing compound, jointing paste
greased = greased, with grease, grease, bearing grease, assembly grease
oiled = oiled, lubricated
anti-seize = anti seize, antiseize, anti seize paste, anti seize compound, copper paste, copper grease, assembly paste
dry = dry
`;

export const HAPPENED = `
slackened = slackened, slackened off, loosened, slacked, slacked off, backed off, slack off, slacken
opened = opened, open, opened up
aside = aside, moved aside, put aside, swung aside, tied aside, pushed aside, set aside, laid aside, hung aside
off = off, took off, taken off, came off, removed, disconnected, undone, out, took out, taken out, came out, pulled, unplugged, unscrewed, unclipped, drilled out, cut off
`;

export const FLUID_DID = `
drained = drained, drained off, let out, emptied, drain
lost = lost, lost all, lost some, spilt, spilled, ran out
filled = filled, refilled, topped up, filled with
bled = bled
`;

export const TEMPORARY = `
blocks = rag, bung, blanking plug, blanking cap, blanking plate, shop towel, paper towel, masking tape, tape, cling film
supports = axle stand, jack, prop, trolley jack, bottle jack, ratchet strap, wooden block, wood block, engine support
cages = caging bolt, caging pin, spring compressor
locks = locking pin, timing pin, timing lock, timing peg, crank lock, flywheel lock, cam lock, locking tool, locking bolt, slave pin
aid = guide pin, slave stud, alignment pin, drip tray, catch tray
`;

export const RENEW = `
must = renew, must renew, must be renewed, must be replaced, replace, renewed, always new, single use, new one, to renew, needs renewing
if worn = renew if worn, replace if worn
`;

export const NUMBERS = `
1 = one
2 = two, pair of
3 = three
4 = four
5 = five
6 = six
7 = seven
8 = eight
9 = nine
10 = ten
11 = eleven
12 = twelve, dozen
`;

/** Ends of a machine, each said as "… end": places, also where the word alone is a part. */
export const ENDS =
  'drive, non drive, nondrive, gear, motor, engine, pump, fan, blower, compressor, generator, gearbox, clutch, flywheel, coupling, pulley, belt, chain, wheel, headstock, tailstock, free, fixed, blind, left, left hand, right, right hand, front, rear, back, top, bottom, upper, lower, inner, outer, near, far, inlet, outlet, input, output, suction, discharge, feed, operator';

export const PLAIN = `
across-flats = af, a f, across flats, spanner, wrench, head, headed, sw, spanner size
long = long
length-word = length, len
of-them = of them, of these, of those, of which
rest = rest, the rest, others, the others, the other, other, remaining, remainder
each = each, per hole, a piece, per side
more = more, further, another
missing = missing, absent, not there, missing already, already missing, was missing, were missing, is missing, are missing, empty
as-found = as found, on arrival, when found, before i started, from the start, already
left-hand = lh, left hand, left hand thread, left handed, lh thread, left hand threaded, left handed thread, reverse thread
by-feel = by feel, snug, hand tight, snug by feel, nipped up
coarse = coarse, coarse thread
fine = fine, fine thread, fine pitch
held = hung, hanging, tied, held, strapped, wired, propped, resting, supported, cable tied, zip tied, suspended
own-place = own place, to own place, own position, keep in order, keep in place, same place, goes back same place, back in same place, matched pair, not interchangeable
leave-alone = leave alone, do not undo, do not touch, dont touch, leave connected
must-come-out = must come out, to come out, comes out again, must come out again, take out again
place = front, rear, back, left, right, upper, lower, top, bottom, inner, outer, inside, outside, underneath, near side, off side, nearside, offside, middle, centre, center, centre left, side, main, small, big, large, left side, right side, nde, left hand side, right hand side, lh side, rh side, both sides, intake side, outlet side, inlet side, drive side, top left, top right, bottom left, bottom right, front left, front right, rear left, rear right
preposition = of, at, on, to, from, behind, under, for, in, by, into, onto, over, between, through, near, below, above, next to, beside
with = with, plus
and = and
stack-word = stack, stacks
clamp-word = clamp size
remark = stainless, brass, black, zinc, zinc plated, plated, galvanised, painted, plastic, copper, aluminium, steel, short, tight, very tight, reused, new, old, original, partly threaded, fully threaded, captive, hidden, thick, thin, blue, red, green, yellow, white, hand threaded
filler = torque, torqued, torqued to, tightened to, the, a, an, was, were, is, are, that, it, them, then, please, right hand, right hand thread, rh, all, approx, about, pcs, pc, pieces, off of, both, class of, has, have, had, its, as, size, thread
`;
