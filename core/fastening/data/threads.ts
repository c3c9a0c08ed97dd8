/**
 * ISO metric threads. Columns: designation, nominal diameter mm, pitch mm, series, nominal stress area mm², confidence, note.
 * Source: ISO 261 (diameter and pitch), ISO 724 (basic dimensions), ISO 898-1 tables 4 to 7 (stress area, three figures).
 * Confidence: public copies that agree. Disagreement found: one public table averages d2 with d1 instead of d3
 * and prints M8x1 39.97, M10x1.25 62.46, M12x1.25 93.61, about 2 % too large for ISO 898-1.
 */
export const METRIC_THREADS = `
M3|3|0.5|coarse|5.03|verified-5|
M3.5|3.5|0.6|coarse|6.78|verified-4|
M4|4|0.7|coarse|8.78|verified-5|
M5|5|0.8|coarse|14.2|verified-6|
M6|6|1|coarse|20.1|verified-6|
M7|7|1|coarse|28.9|verified-4|
M8|8|1.25|coarse|36.6|verified-6|
M10|10|1.5|coarse|58.0|verified-6|
M12|12|1.75|coarse|84.3|verified-6|
M14|14|2|coarse|115|verified-5|
M16|16|2|coarse|157|verified-6|
M18|18|2.5|coarse|192|verified-5|
M20|20|2.5|coarse|245|verified-6|
M22|22|2.5|coarse|303|verified-5|
M24|24|3|coarse|353|verified-6|
M8x1|8|1|fine|39.2|verified-4|
M10x1.25|10|1.25|fine|61.2|verified-4|
M10x1|10|1|fine|64.5|verified-3|
M12x1.5|12|1.5|fine|88.1|verified-4|
M12x1.25|12|1.25|fine|92.1|verified-3|
M14x1.5|14|1.5|fine|125|verified-1|one stored copy plus the formula
M16x1.5|16|1.5|fine|167|verified-3|
M18x1.5|18|1.5|fine|216|verified-1|one stored copy plus the formula
M20x1.5|20|1.5|fine|272|verified-3|
M22x1.5|22|1.5|fine|333|verified-1|one stored copy plus the formula
M24x2|24|2|fine|384|verified-2|
M6x0.75|6|0.75|fine|22.0|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M12x1|12|1|fine|96.1|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M14x1.25|14|1.25|fine|129|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M18x2|18|2|fine|204|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M20x2|20|2|fine|258|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M22x2|22|2|fine|318|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
M24x1.5|24|1.5|fine|401|memory|pitch listed in ISO 261; not a pitch of the ISO 898-1 load tables; area computed from the formula only
`;

/**
 * Unified inch threads. Columns: designation, major diameter in, threads per inch, series, stress area in², confidence, note.
 * Source: ASME B1.1. Disagreement found: one distributor sheet rounds up in the last figure (5/16-18, 5/16-24, 3/4-10, 7/8-14, #5-44, 1-14).
 */
export const UNIFIED_THREADS = `
#4-40|0.1120|40|UNC|0.00604|verified-2|
#4-48|0.1120|48|UNF|0.00661|verified-2|
#5-40|0.1250|40|UNC|0.00796|verified-1|
#5-44|0.1250|44|UNF|0.00830|verified-2|one copy prints 0.00831
#6-32|0.1380|32|UNC|0.00909|verified-2|
#6-40|0.1380|40|UNF|0.01015|verified-2|
#8-32|0.1640|32|UNC|0.0140|verified-2|
#8-36|0.1640|36|UNF|0.01474|verified-2|
#10-24|0.1900|24|UNC|0.0175|verified-2|
#10-32|0.1900|32|UNF|0.0200|verified-2|
#12-24|0.2160|24|UNC|0.0242|verified-1|
#12-28|0.2160|28|UNF|0.0258|verified-2|
1/4-20|0.2500|20|UNC|0.0318|verified-2|
1/4-28|0.2500|28|UNF|0.0364|verified-2|
5/16-18|0.3125|18|UNC|0.0524|verified-2|one copy prints 0.0525
5/16-24|0.3125|24|UNF|0.0580|verified-2|one copy prints 0.0581
3/8-16|0.3750|16|UNC|0.0775|verified-2|
3/8-24|0.3750|24|UNF|0.0878|verified-2|
7/16-14|0.4375|14|UNC|0.1063|verified-2|one copy prints 0.0163, a digit slip
7/16-20|0.4375|20|UNF|0.1187|verified-2|
1/2-13|0.5000|13|UNC|0.1419|verified-2|
1/2-20|0.5000|20|UNF|0.1599|verified-2|
9/16-12|0.5625|12|UNC|0.182|verified-1|
9/16-18|0.5625|18|UNF|0.203|verified-2|
5/8-11|0.6250|11|UNC|0.226|verified-2|
5/8-18|0.6250|18|UNF|0.256|verified-2|
3/4-10|0.7500|10|UNC|0.334|verified-2|one copy prints 0.335
3/4-16|0.7500|16|UNF|0.373|verified-2|
7/8-9|0.8750|9|UNC|0.462|verified-2|
7/8-14|0.8750|14|UNF|0.509|verified-2|one copy prints 0.510
1-8|1.0000|8|UNC|0.606|verified-2|
1-12|1.0000|12|UNF|0.663|verified-2|
1-14|1.0000|14|UNS|0.679|verified-1|not UNF: 1-14 is UNS (old NF); one copy prints 0.680
`;

/** Sizes beyond the checked tables: diameter and pitch from memory (ISO 261), area by the formula. Columns as METRIC_THREADS. */
export const METRIC_THREADS_MORE = `
M1.6|1.6|0.35|coarse|1.27|memory|area by the formula only
M2|2|0.4|coarse|2.07|memory|area by the formula only
M2.5|2.5|0.45|coarse|3.39|memory|area by the formula only
M27|27|3|coarse|459|memory|area by the formula only
M30|30|3.5|coarse|561|memory|area by the formula only
M33|33|3.5|coarse|694|memory|area by the formula only
M36|36|4|coarse|817|memory|area by the formula only
M27x2|27|2|fine|496|memory|area by the formula only
M30x2|30|2|fine|621|memory|area by the formula only
M33x2|33|2|fine|761|memory|area by the formula only
M36x3|36|3|fine|865|memory|area by the formula only
`;
