/**
 * Torques of aircraft practice in lbf·in: thread, tension-type nut from and to, shear-type nut from and to, most for a tension-type nut, confidence.
 * Source: FAA AC 43.13-1B table 7-1 (cadmium plated steel, threads free of oil). The last figure is a limit, not a target.
 * Disagreements: one copy misprints the shear column of 10-24 as 12 and prints 150 to 185 for 3/8-16.
 */
export const AIRCRAFT_TORQUES = `
#8-36|12|15|7|9|20|verified-3
#10-32|20|25|12|15|40|verified-3
1/4-28|50|70|30|40|100|verified-3
5/16-24|100|140|60|85|225|verified-3
3/8-24|160|190|95|110|390|verified-3
7/16-20|450|500|270|300|840|verified-3
1/2-20|480|690|290|410|1100|verified-3
9/16-18|800|1000|480|600|1600|verified-3
5/8-18|1100|1300|600|780|2400|verified-3
3/4-16|2300|2500|1300|1500|5000|verified-3
7/8-14|2500|3000|1500|1800|7000|verified-3
1-14|3700|5500|2200|3300|10000|verified-3
#8-32|12|15|7|9|20|verified-3
#10-24|20|25|12|15|35|verified-3
1/4-20|40|50|25|30|75|verified-3
5/16-18|80|90|48|55|160|verified-3
3/8-16|160|185|95|100|275|verified-3
7/16-14|235|255|140|155|475|verified-3
1/2-13|400|480|240|290|880|verified-3
9/16-12|500|700|300|420|1100|verified-3
5/8-11|700|900|420|540|1500|verified-3
3/4-10|1150|1600|700|950|2500|verified-3
7/8-9|2200|3000|1300|1800|4600|verified-3
1-8|3700|5000|2200|3000|7600|memory
1-1/8-12|5000|7000|3000|4200|15000|memory
1-1/8-8|5500|6500|3300|4000|12000|memory
1-1/4-12|9000|11000|5400|6600|25000|memory
1-1/4-8|6500|8000|4000|5000|16000|memory
`;

/**
 * Least prevailing torque in lbf·in at which a used self-locking nut may stay in use: thread, torque, confidence.
 * Source: FAA AC 43.13-1B table 7-2.
 */
export const LEAST_DRAG = `
7/16-20|8|verified-1
1/2-20|10|verified-1
9/16-18|13|verified-1
3/4-16|27|verified-1
7/8-14|40|verified-1
1-14|55|verified-1
1-1/4-12|94|verified-1
7/16-14|8|verified-1
1/2-13|10|verified-1
5/8-11|20|verified-1
3/4-10|27|verified-1
7/8-9|40|verified-1
1-1/8-8|68|verified-1
1-1/4-8|88|verified-1
5/8-18|18|memory
1-1/8-12|73|memory
9/16-12|14|memory
1-8|51|memory
`;
