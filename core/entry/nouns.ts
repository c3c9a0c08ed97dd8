/** Nouns of the trade, by what they are on the line: parts, connections, fluids. Plurals are made by rule. */
export const NOUNS = {
  parts: `
gasket = gasket, paper gasket, head gasket
O-ring = o ring, oring
seal = seal, lip seal, shaft seal, oil seal, dust seal, sealing ring, grommet
filter = filter, strainer, oil filter, air filter, fuel filter
sleeve = locating sleeve, sleeve, dowel sleeve, liner
shim = shim, shim pack
plain = part, cover, lid, cap, plate, panel, guard, shield, heat shield, casing, case, housing, body, block, base, frame, bracket, mount, mounting, support bracket, strap bracket, arm, lever, handle, knob, wheel, handwheel, hub, disc, drum, rotor, stator, caliper, calliper, pad, shoe, brake pad, brake shoe, pump, water pump, oil pump, gear pump, fuel pump, motor, engine, gearbox, transmission, differential, clutch, pressure plate, clutch plate, flywheel, crankshaft, camshaft, shaft, drive shaft, driveshaft, half shaft, axle, spindle, chuck, tailstock, headstock, saddle, cross slide, slide, sight glass, elbow, gib, gib strip, strip, carriage, apron, leadscrew, lead screw, feed screw, gear, pinion, sprocket, pulley, belt, drive belt, timing belt, v belt, chain, timing chain, tensioner, idler, roller, bearing, ball bearing, bearing cap, race, cage, bush, bushing, collar, thrust washer, thrust plate, coupling, joint, ball joint, tie rod, tie rod end, track rod, track rod end, rod end, rod, push rod, pushrod, con rod, connecting rod, piston, piston ring, ring, cylinder, cylinder head, rocker, rocker arm, rocker cover, valve cover, cam cover, cam, follower, lifter, tappet, valve, check valve, relief valve, solenoid valve, solenoid, spring, coil spring, leaf spring, damper, shock absorber, strut, wishbone, beam, crossmember, subframe, sump, oil pan, pan, tank, reservoir, header tank, bowl, radiator, cooler, heat exchanger, fan, fan blade, cowl, shroud, duct, air box, airbox, manifold, inlet manifold, intake manifold, exhaust manifold, exhaust, silencer, muffler, down pipe, turbo, turbocharger, carburettor, carburetor, throttle body, injector, nozzle, jet, float, diaphragm, impeller, vane, scroll, wear ring, gland, packing, stuffing box, thermostat, sensor, switch, relay, coil, ignition coil, spark plug, glow plug, drain plug, filler plug, sump plug, level plug, filler cap, oil cap, dipstick, breather, alternator, generator, starter, starter motor, dynamo, brush, brush holder, armature, commutator, battery, fuse box, control box, control unit, terminal block, terminal cover, display, gauge, meter, lamp, light, headlamp, bulb, mirror, seat, door, bonnet, hood, bumper, grille, trim, trim panel, undertray, under tray, splash shield, wheel arch liner, mudguard, wing panel, tray, drip cover, carrier, yoke, fork, spider, cross, u joint, universal joint, cv joint, gaiter, boot, bellows, clutch cover, end cover, end cap, end plate, front cover, rear cover, side cover, top cover, inspection cover, adjuster, barrel adjuster, adaptor plate, adapter, spacer plate, retainer, retaining plate, keeper, collet, lock plate, lock tab, tab, stop, buffer, rubber mount, foot, leg, rail, guide, worm, worm wheel, rack, steering rack, column, pedal, cable bracket, hose bracket, group head, group, shower screen, portafilter, boiler, heating element, element, grinder, burr, blade, knife, table, bed, vice, jaw, toolpost, tool post, quill, chute, hopper, screen, agitator, mixer, drive, encoder, resolver, drive plate, torque converter, valve body, servo, master cylinder, slave cylinder, wheel cylinder, ram, actuator, accumulator, distributor, magneto, points, condenser, choke, linkage arm, governor, regulator, intercooler, egr valve, plenum, trunk, hatch, flap, hinge, latch, lock, catch, insert, block off plate, weight, counterweight, balancer, damper pulley, crank pulley, spigot, snout, nose, cone, cup, ball, swashplate, barrel, port plate, wear plate, side plate
`,
  connections: `
hose = hose, vacuum hose, rubber hose, breather hose, fuel hose, return hose
pipe = pipe, line, tube, brake pipe, brake line, fuel line, fuel pipe, hard line, oil pipe, return line, vacuum line
plug = plug, electrical plug, multi plug, multiplug
connector = connector, electrical connector
cable = cable, wire, lead, loom, harness, wiring loom, throttle cable, battery cable, ht lead
earth lead = earth lead, earth strap, earth cable, ground strap, ground lead, ground cable, earth wire
union = union, union nut, flare nut, banjo union, pipe union, fitting
linkage = linkage, link rod, gear linkage, shift linkage, throttle linkage
`,
  fluids: `
fluid = fluid, oil, engine oil, gear oil, hydraulic oil, hydraulic fluid, coolant, water, brake fluid, clutch fluid, power steering fluid, steering fluid, atf, transmission fluid, transmission oil, fuel, petrol, gasoline, diesel, cutting fluid, refrigerant, grease, cutting oil, spindle oil, way oil, compressor oil, fork oil, screenwash, washer fluid, antifreeze, glycol
`,
} as const;
