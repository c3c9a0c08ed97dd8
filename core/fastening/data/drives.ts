/**
 * Spanner and key sizes. A line "> family|standard|drive|unit" opens a family; under it: thread, tool size, confidence, note.
 * The tool size is the nominal spanner or key: the greatest width across flats outside, the nominal key inside.
 * Source: ISO 272 and the product standards named in each line; withdrawn DIN sizes are kept, because the parts are still out there.
 * Confidence: public tables that agree; they may share an ancestor, so the number is an upper bound.
 * Disagreements (M10, M12, M14, M22 by old DIN and ISO; flange parts) stand in the notes.
 */
export const DRIVES = `
> hex head bolt partly threaded|ISO 4014|hex external|mm
M3|5.5|verified-4 ~ M3.5|6|verified-2 ~ M4|7|verified-4 ~ M5|8|verified-4 ~ M6|10|verified-4
M7|11|verified-1|non-preferred size, from DIN practice ~ M8|13|verified-4 ~ M10|16|verified-4 ~ M12|18|verified-4
M14|21|verified-3|another public table prints 22 ~ M16|24|verified-4 ~ M18|27|verified-3 ~ M20|30|verified-4 ~ M22|34|verified-3
M24|36|verified-4
> hex head screw fully threaded|ISO 4017|hex external|mm
M3|5.5|verified-3 ~ M3.5|6|verified-2|another public table prints 5.5 ~ M4|7|verified-3 ~ M5|8|verified-3 ~ M6|10|verified-3
M7|11|verified-1|non-preferred size, from DIN practice ~ M8|13|verified-3 ~ M10|16|verified-3 ~ M12|18|verified-3
M14|21|verified-1|another public table prints 22 ~ M16|24|verified-3 ~ M18|27|verified-3 ~ M20|30|verified-3
M22|34|verified-2|another public table prints 32 ~ M24|36|verified-3
> hex head bolt partly threaded|DIN 931 (withdrawn)|hex external|mm
M3|5.5|verified-2 ~ M3.5|6|memory ~ M4|7|verified-2 ~ M5|8|verified-2 ~ M6|10|verified-2 ~ M7|11|verified-1 ~ M8|13|verified-2
M10|17|verified-2|differs from ISO ~ M12|19|verified-2|differs from ISO ~ M14|22|verified-2|differs from ISO ~ M16|24|verified-2
M18|27|verified-2 ~ M20|30|verified-2 ~ M22|32|verified-2|differs from ISO ~ M24|36|verified-2
> hex head screw fully threaded|DIN 933 (withdrawn)|hex external|mm
M3|5.5|verified-2 ~ M3.5|6|verified-1|another public table prints 5.5 ~ M4|7|verified-2 ~ M5|8|verified-2 ~ M6|10|verified-2
M7|11|verified-1 ~ M8|13|verified-2 ~ M10|17|verified-2|differs from ISO ~ M12|19|verified-2|differs from ISO
M14|22|verified-2|differs from ISO ~ M16|24|verified-2 ~ M18|27|verified-2 ~ M20|30|verified-2
M22|32|verified-2|differs from ISO ~ M24|36|verified-2
> hex nut style 1|ISO 4032|hex external|mm
M3|5.5|verified-4 ~ M3.5|6|verified-3 ~ M4|7|verified-4 ~ M5|8|verified-4 ~ M6|10|verified-4 ~ M7|11|verified-1 ~ M8|13|verified-4
M10|16|verified-4 ~ M12|18|verified-4 ~ M14|21|verified-3|another public table prints 22 ~ M16|24|verified-4 ~ M18|27|verified-3
M20|30|verified-4 ~ M22|34|verified-3 ~ M24|36|verified-4
> hex nut|DIN 934 (withdrawn)|hex external|mm
M3|5.5|verified-2 ~ M3.5|6|verified-2 ~ M4|7|verified-2 ~ M5|8|verified-2 ~ M6|10|verified-2 ~ M7|11|verified-2 ~ M8|13|verified-2
M10|17|verified-2|differs from ISO ~ M12|19|verified-2|differs from ISO ~ M14|22|verified-2|differs from ISO ~ M16|24|verified-2
M18|27|verified-2 ~ M20|30|verified-2 ~ M22|32|verified-2|differs from ISO ~ M24|36|verified-2
> hex thin nut|ISO 4035|hex external|mm
M3|5.5|verified-4 ~ M3.5|6|verified-3 ~ M4|7|verified-4 ~ M5|8|verified-4 ~ M6|10|verified-4 ~ M7|11|memory ~ M8|13|verified-4
M10|16|verified-3|another public table prints 17 ~ M12|18|verified-3|another public table prints 19
M14|21|verified-2|another public table prints 22 ~ M16|24|verified-4 ~ M18|27|verified-3 ~ M20|30|verified-4
M22|34|verified-2|another public table prints 32 ~ M24|36|verified-4
> hex thin nut|DIN 439 B (withdrawn)|hex external|mm
M3|5.5|verified-1 ~ M3.5|6|verified-1 ~ M4|7|verified-1 ~ M5|8|verified-1 ~ M6|10|verified-1 ~ M7|11|memory ~ M8|13|verified-1
M10|17|verified-1 ~ M12|19|verified-1 ~ M14|22|verified-1 ~ M16|24|verified-1 ~ M18|27|verified-1 ~ M20|30|verified-1
M22|32|verified-1 ~ M24|36|verified-1
> prevailing-torque nut with plastic insert|ISO 7040|hex external|mm
M3|5.5|verified-1 ~ M4|7|verified-1 ~ M5|8|verified-1 ~ M6|10|verified-1 ~ M8|13|verified-1 ~ M10|16|verified-1
M12|18|verified-1 ~ M14|21|verified-1 ~ M16|24|verified-1 ~ M20|30|verified-1 ~ M24|36|verified-1
> prevailing-torque nut with plastic insert|DIN 985 (withdrawn)|hex external|mm
M3|5.5|verified-2 ~ M4|7|verified-2 ~ M5|8|verified-2 ~ M6|10|verified-2 ~ M7|11|verified-2 ~ M8|13|verified-2
M10|17|verified-1|disputed: DIN 985 parts are sold with both the old and the ISO width; measure; disagreeing copy library A (nyloc table): 16
M12|19|verified-1|disputed: DIN 985 parts are sold with both the old and the ISO width; measure; disagreeing copy library A (nyloc table): 18
M14|22|verified-2|disputed: DIN 985 parts are sold with both the old and the ISO width; measure ~ M16|24|verified-2
M18|27|verified-2 ~ M20|30|verified-2
> castle nut|DIN 935|hex external|mm
M8|13|verified-1 ~ M10|17|verified-1 ~ M12|19|verified-1 ~ M14|22|verified-1 ~ M16|24|verified-1 ~ M20|30|verified-1
> hex flange bolt small series|ISO 15071 / ISO 15072|hex external|mm
M5|7|verified-1 ~ M6|8|verified-1 ~ M8|10|verified-1 ~ M10|13|verified-1 ~ M12|15|verified-1|EN 1662 says 16 ~ M14|18|verified-1
M16|21|verified-1
> hex flange bolt small series|ISO 4162|hex external|mm
M5|7|verified-1 ~ M6|8|verified-1 ~ M8|10|verified-1 ~ M10|13|verified-1 ~ M12|15|verified-1|EN 1662 says 16 ~ M14|18|verified-1
M16|21|verified-1
> hex flange bolt small series|EN 1662|hex external|mm
M5|7|verified-2 ~ M6|8|verified-2 ~ M8|10|verified-2 ~ M10|13|verified-2 ~ M12|16|verified-2|ISO 15071/15072/4162 say 15
M14|18|verified-2 ~ M16|21|verified-2
> hex flange bolt heavy series|EN 1665|hex external|mm
M5|8|verified-2 ~ M6|10|verified-2 ~ M8|13|verified-2 ~ M10|16|verified-2|some makers supply 15 ~ M12|18|verified-2
M14|21|verified-2 ~ M16|24|verified-2 ~ M20|30|verified-2
> hex flange nut|ISO 4161|hex external|mm
M5|8|verified-3 ~ M6|10|verified-3 ~ M8|13|verified-3
M10|15|verified-3|disputed across flange nut standards: 15 in ISO 4161 copies, 16 in EN 1661 and ISO 21670 copies
M12|18|verified-3 ~ M14|21|verified-2 ~ M16|24|verified-3 ~ M20|30|verified-3
> hex flange nut|EN 1661|hex external|mm
M5|8|verified-1 ~ M6|10|verified-1 ~ M8|13|verified-1 ~ M10|16|verified-1|disputed: 15 in ISO 4161 copies ~ M12|18|verified-1
M14|21|verified-1 ~ M16|24|verified-1 ~ M20|30|verified-1
> hex flange bolt, Japanese automotive reduced hex|JIS B 1189 / JASO practice|hex external|mm
M6|10|memory|doubtful: JIS permits 2 series; vehicles with 12 on M8 and 14 on M10 are common; measure
M8|12|memory|doubtful: JIS permits 2 series; vehicles with 12 on M8 and 14 on M10 are common; measure
M10|14|memory|doubtful: JIS permits 2 series; vehicles with 12 on M8 and 14 on M10 are common; measure
M12|17|memory|doubtful: JIS permits 2 series; vehicles with 12 on M8 and 14 on M10 are common; measure
> socket head cap screw|ISO 4762 / DIN 912|hex socket|mm
M3|2.5|verified-4 ~ M4|3|verified-4 ~ M5|4|verified-4 ~ M6|5|verified-4 ~ M8|6|verified-4 ~ M10|8|verified-4 ~ M12|10|verified-4
M14|12|verified-3 ~ M16|14|verified-4 ~ M18|14|verified-1 ~ M20|17|verified-4 ~ M22|17|verified-1 ~ M24|19|verified-4
> socket head cap screw, low head|DIN 7984|hex socket|mm
M3|2|verified-1 ~ M4|2.5|verified-1 ~ M5|3|verified-1 ~ M6|4|verified-1 ~ M8|5|verified-1 ~ M10|7|verified-1 ~ M12|8|verified-1
M14|10|verified-1 ~ M16|12|verified-1 ~ M18|12|verified-1 ~ M20|14|verified-1 ~ M22|14|verified-1 ~ M24|17|verified-1
> socket head cap screw, low head with pilot|DIN 6912|hex socket|mm
M4|3|verified-1 ~ M5|4|verified-1 ~ M6|5|verified-1 ~ M8|6|verified-1 ~ M10|8|verified-1 ~ M12|10|verified-1 ~ M14|12|verified-1
M16|14|verified-1 ~ M18|14|verified-1 ~ M20|17|verified-1 ~ M22|17|verified-1 ~ M24|19|verified-1
> countersunk socket head screw|ISO 10642 / DIN 7991|hex socket|mm
M3|2|verified-3 ~ M4|2.5|verified-3 ~ M5|3|verified-3 ~ M6|4|verified-3 ~ M8|5|verified-3 ~ M10|6|verified-3 ~ M12|8|verified-3
M14|10|verified-3 ~ M16|10|verified-3 ~ M20|12|verified-3
> button head socket screw|ISO 7380-1|hex socket|mm
M3|2|verified-3 ~ M4|2.5|verified-3 ~ M5|3|verified-3 ~ M6|4|verified-3 ~ M8|5|verified-3 ~ M10|6|verified-3 ~ M12|8|verified-3
M16|10|verified-3
> socket set screw|ISO 4026 to ISO 4029 / DIN 913 to 916|hex socket|mm
M3|1.5|verified-4 ~ M4|2|verified-4 ~ M5|2.5|verified-4 ~ M6|3|verified-4 ~ M8|4|verified-4 ~ M10|5|verified-4 ~ M12|6|verified-4
M14|6|verified-2 ~ M16|8|verified-4 ~ M18|10|verified-2 ~ M20|10|verified-4 ~ M22|12|verified-2 ~ M24|12|verified-3
> shoulder screw (thread size, not shoulder)|ISO 7379|hex socket|mm
M5|3|verified-1|shoulder diameter is the named size in the standard
M6|4|verified-1|shoulder diameter is the named size in the standard
M8|5|verified-1|shoulder diameter is the named size in the standard
M10|6|verified-1|shoulder diameter is the named size in the standard
M12|8|verified-1|shoulder diameter is the named size in the standard
M16|10|verified-1|shoulder diameter is the named size in the standard
M20|12|verified-1|shoulder diameter is the named size in the standard
> hex cap screw / hex bolt|ASME B18.2.1|hex external|in
1/4|7/16|verified-1 ~ 5/16|1/2|verified-1 ~ 3/8|9/16|verified-1 ~ 7/16|5/8|verified-1 ~ 1/2|3/4|verified-1 ~ 9/16|13/16|memory
5/8|15/16|verified-1 ~ 3/4|1-1/8|verified-1 ~ 7/8|1-5/16|verified-1 ~ 1|1-1/2|verified-1
> hex nut|ASME B18.2.2|hex external|in
1/4|7/16|verified-2 ~ 5/16|1/2|verified-2 ~ 3/8|9/16|verified-2 ~ 7/16|11/16|verified-2|nut 11/16, bolt head 5/8
1/2|3/4|verified-2 ~ 9/16|7/8|verified-2|nut 7/8, bolt head 13/16 ~ 5/8|15/16|verified-2 ~ 3/4|1-1/8|verified-2
7/8|1-5/16|verified-2 ~ 1|1-1/2|verified-2
> socket head cap screw|ASME B18.3|hex socket|in
#4|3/32|verified-3 ~ #5|3/32|verified-3 ~ #6|7/64|verified-3 ~ #8|9/64|verified-3 ~ #10|5/32|verified-3 ~ 1/4|3/16|verified-3
5/16|1/4|verified-3 ~ 3/8|5/16|verified-3 ~ 7/16|3/8|verified-3 ~ 1/2|3/8|verified-3 ~ 5/8|1/2|verified-3 ~ 3/4|5/8|verified-3
7/8|3/4|verified-3 ~ 1|3/4|verified-3
> flat countersunk socket screw|ASME B18.3|hex socket|in
#4|1/16|verified-1 ~ #5|5/64|verified-1 ~ #6|5/64|verified-1 ~ #8|3/32|verified-1 ~ #10|1/8|verified-1 ~ 1/4|5/32|verified-1
5/16|3/16|verified-1 ~ 3/8|7/32|verified-1 ~ 7/16|1/4|verified-1 ~ 1/2|5/16|verified-1 ~ 5/8|3/8|verified-1 ~ 3/4|1/2|verified-1
> button head socket screw|ASME B18.3|hex socket|in
#4|1/16|verified-1 ~ #5|5/64|verified-1 ~ #6|5/64|verified-1 ~ #8|3/32|verified-1 ~ #10|1/8|verified-1 ~ 1/4|5/32|verified-1
5/16|3/16|verified-1 ~ 3/8|7/32|verified-1 ~ 1/2|5/16|verified-1 ~ 5/8|3/8|verified-1
> socket set screw|ASME B18.3|hex socket|in
#4|0.050|verified-1 ~ #5|1/16|verified-1 ~ #6|1/16|verified-1 ~ #8|5/64|verified-1 ~ #10|3/32|verified-1 ~ 1/4|1/8|verified-1
5/16|5/32|verified-1 ~ 3/8|3/16|verified-1 ~ 7/16|7/32|verified-1 ~ 1/2|1/4|verified-1 ~ 5/8|5/16|verified-1 ~ 3/4|3/8|verified-1
7/8|1/2|verified-1 ~ 1|9/16|verified-1
> socket head cap screw|ISO 14579|hexalobular|ISO 10664 no.
M2|T6|verified-1 ~ M2.5|T8|verified-1 ~ M3|T10|verified-1 ~ M4|T20|verified-1 ~ M5|T25|verified-1 ~ M6|T30|verified-1
M8|T45|verified-1 ~ M10|T50|verified-1 ~ M12|T55|verified-1 ~ M14|T60|verified-1 ~ M16|T70|verified-1 ~ M18|T80|verified-1
M20|T90|verified-1
> pan head screw|ISO 14583|hexalobular|ISO 10664 no.
M2|T6|verified-2 ~ M2.5|T8|verified-2 ~ M3|T10|verified-2 ~ M3.5|T15|verified-2 ~ M4|T20|verified-2 ~ M5|T25|verified-2
M6|T30|verified-2 ~ M8|T45|verified-2 ~ M10|T50|verified-2
> low cheese head screw|ISO 14580|hexalobular|ISO 10664 no.
M2|T6|verified-2 ~ M2.5|T8|verified-2 ~ M3|T10|verified-2 ~ M3.5|T15|verified-2 ~ M4|T20|verified-2 ~ M5|T25|verified-2
M6|T30|verified-2 ~ M8|T45|verified-2 ~ M10|T50|verified-2
> countersunk head screw|ISO 14581|hexalobular|ISO 10664 no.
M2|T6|verified-2 ~ M2.5|T8|verified-2 ~ M3|T10|verified-2 ~ M3.5|T15|verified-1|another public table prints T10
M4|T20|verified-2 ~ M5|T25|verified-2 ~ M6|T30|verified-2 ~ M8|T45|verified-2 ~ M10|T50|verified-2
> countersunk head screw, high head|ISO 14582|hexalobular|ISO 10664 no.
M3|T10|verified-2 ~ M4|T20|verified-2 ~ M5|T25|verified-2 ~ M6|T30|verified-2 ~ M8|T45|verified-2 ~ M10|T50|verified-2
> hexalobular socket, outside dimension A (nominal)|ISO 10664|hexalobular|mm
T6|1.75|verified-2 ~ T8|2.4|verified-2 ~ T10|2.8|verified-2 ~ T15|3.35|verified-2 ~ T20|3.95|verified-2 ~ T25|4.5|verified-2
T30|5.6|verified-2 ~ T40|6.75|verified-2 ~ T45|7.93|verified-2|some screw tables print 7.95 for T45 ~ T50|8.95|verified-2
T55|11.35|verified-2 ~ T60|13.45|verified-2 ~ T70|15.7|verified-2 ~ T80|17.75|verified-2 ~ T90|20.2|verified-2
T100|22.4|verified-2
`;
