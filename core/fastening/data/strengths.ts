/**
 * Strength by class. Columns: system, class or grade, range, quantity, value, unit, confidence, note.
 * Source: ISO 898-1 table 3, SAE J429 table 1, ISO 3506-1 table 2.
 * Disagreements found: one page gives 65 000 psi as grade 5 proof (85 000 elsewhere) and one 72 000 psi as grade 2 tensile (74 000 elsewhere);
 * a textbook gives 8.8 only as 600 MPa.
 */
export const STRENGTHS = `
ISO 898-1|4.6|all|proof_strength_Sp|225|MPa|verified-3 ~ ISO 898-1|4.8|all|proof_strength_Sp|310|MPa|verified-3
ISO 898-1|5.6|all|proof_strength_Sp|280|MPa|verified-3 ~ ISO 898-1|5.8|all|proof_strength_Sp|380|MPa|verified-3
ISO 898-1|6.8|all|proof_strength_Sp|440|MPa|verified-3
ISO 898-1|9.8|d<=16|proof_strength_Sp|650|MPa|verified-3|class defined for d <= 16 mm only
ISO 898-1|10.9|all|proof_strength_Sp|830|MPa|verified-3 ~ ISO 898-1|12.9|all|proof_strength_Sp|970|MPa|verified-3
ISO 898-1|8.8|d<=16|proof_strength_Sp|580|MPa|verified-3|structural bolting uses the upper value from M12 on; one textbook table lists only 600 (its range starts at M16)
ISO 898-1|8.8|d>16|proof_strength_Sp|600|MPa|verified-3
ISO 898-1|4.6|all|tensile_strength_Rm_min|400|MPa|verified-1|table minimum, not the nominal value encoded in the class mark
ISO 898-1|4.6|all|yield_ReL_or_Rp0.2_min|240|MPa|verified-1
ISO 898-1|4.8|all|tensile_strength_Rm_min|420|MPa|memory|table minimum, not the nominal value encoded in the class mark
ISO 898-1|4.8|all|yield_ReL_or_Rp0.2_min|340|MPa|memory|for 4.8, 5.8, 6.8 this is the 0.0048 d proof value Rpf
ISO 898-1|5.6|all|tensile_strength_Rm_min|500|MPa|memory|table minimum, not the nominal value encoded in the class mark
ISO 898-1|5.6|all|yield_ReL_or_Rp0.2_min|300|MPa|memory
ISO 898-1|5.8|all|tensile_strength_Rm_min|520|MPa|memory|table minimum, not the nominal value encoded in the class mark
ISO 898-1|5.8|all|yield_ReL_or_Rp0.2_min|420|MPa|memory|for 4.8, 5.8, 6.8 this is the 0.0048 d proof value Rpf
ISO 898-1|6.8|all|tensile_strength_Rm_min|600|MPa|memory|table minimum, not the nominal value encoded in the class mark
ISO 898-1|6.8|all|yield_ReL_or_Rp0.2_min|480|MPa|memory|for 4.8, 5.8, 6.8 this is the 0.0048 d proof value Rpf
ISO 898-1|8.8|d<=16|tensile_strength_Rm_min|800|MPa|verified-1|table minimum, not the nominal value encoded in the class mark
ISO 898-1|8.8|d<=16|yield_ReL_or_Rp0.2_min|640|MPa|verified-1
ISO 898-1|8.8|d>16|tensile_strength_Rm_min|830|MPa|verified-1|table minimum, not the nominal value encoded in the class mark
ISO 898-1|8.8|d>16|yield_ReL_or_Rp0.2_min|660|MPa|verified-1
ISO 898-1|9.8|d<=16|tensile_strength_Rm_min|900|MPa|memory|table minimum, not the nominal value encoded in the class mark
ISO 898-1|9.8|d<=16|yield_ReL_or_Rp0.2_min|720|MPa|memory
ISO 898-1|10.9|all|tensile_strength_Rm_min|1040|MPa|verified-1|table minimum, not the nominal value encoded in the class mark
ISO 898-1|10.9|all|yield_ReL_or_Rp0.2_min|940|MPa|verified-1
ISO 898-1|12.9|all|tensile_strength_Rm_min|1220|MPa|verified-1|table minimum, not the nominal value encoded in the class mark
ISO 898-1|12.9|all|yield_ReL_or_Rp0.2_min|1100|MPa|verified-1 ~ SAE J429|1|1/4 to 1-1/2 in|proof_strength|33000|psi|verified-2
SAE J429|1|1/4 to 1-1/2 in|yield_strength_min|36000|psi|verified-2
SAE J429|1|1/4 to 1-1/2 in|tensile_strength_min|60000|psi|verified-2
SAE J429|2|1/4 to 3/4 in|proof_strength|55000|psi|verified-3 ~ SAE J429|2|1/4 to 3/4 in|yield_strength_min|57000|psi|verified-3
SAE J429|2|1/4 to 3/4 in|tensile_strength_min|74000|psi|verified-3|one public page prints 72,000 psi tensile: outlier
SAE J429|2|over 3/4 to 1-1/2 in|proof_strength|33000|psi|verified-3
SAE J429|2|over 3/4 to 1-1/2 in|yield_strength_min|36000|psi|verified-3
SAE J429|2|over 3/4 to 1-1/2 in|tensile_strength_min|60000|psi|verified-3|one public page prints 72,000 psi tensile: outlier
SAE J429|5|1/4 to 1 in|proof_strength|85000|psi|verified-3|one public page prints 65,000 psi for the proof strength of grade 5: outlier, wrong
SAE J429|5|1/4 to 1 in|yield_strength_min|92000|psi|verified-3 ~ SAE J429|5|1/4 to 1 in|tensile_strength_min|120000|psi|verified-3
SAE J429|5|over 1 to 1-1/2 in|proof_strength|74000|psi|verified-3|one public page prints 65,000 psi for the proof strength of grade 5: outlier, wrong
SAE J429|5|over 1 to 1-1/2 in|yield_strength_min|81000|psi|verified-3
SAE J429|5|over 1 to 1-1/2 in|tensile_strength_min|105000|psi|verified-3
SAE J429|8|1/4 to 1-1/2 in|proof_strength|120000|psi|verified-3
SAE J429|8|1/4 to 1-1/2 in|yield_strength_min|130000|psi|verified-3
SAE J429|8|1/4 to 1-1/2 in|tensile_strength_min|150000|psi|verified-3
ISO 3506-1|A2-50|up to M24 unless stated otherwise|Rp0.2_min|210|MPa|memory|0.2 % proof stress i.e. a yield value, not a proof-load stress as in ISO 898-1
ISO 3506-1|A2-50|up to M24 unless stated otherwise|tensile_strength_min|500|MPa|memory
ISO 3506-1|A2-70|up to M24 unless stated otherwise|Rp0.2_min|450|MPa|verified-1|0.2 % proof stress i.e. a yield value, not a proof-load stress as in ISO 898-1; one public page takes 410 as the design stress for A2-70 screws; that is not the ISO value
ISO 3506-1|A2-70|up to M24 unless stated otherwise|tensile_strength_min|700|MPa|memory
ISO 3506-1|A4-70|up to M24 unless stated otherwise|Rp0.2_min|450|MPa|verified-1|0.2 % proof stress i.e. a yield value, not a proof-load stress as in ISO 898-1
ISO 3506-1|A4-70|up to M24 unless stated otherwise|tensile_strength_min|700|MPa|memory
ISO 3506-1|A4-80|up to M24 unless stated otherwise|Rp0.2_min|600|MPa|verified-1|0.2 % proof stress i.e. a yield value, not a proof-load stress as in ISO 898-1
ISO 3506-1|A4-80|up to M24 unless stated otherwise|tensile_strength_min|800|MPa|memory
`;

/**
 * Proof loads in N: thread, class, load, confidence.
 * Source: ISO 898-1 tables 5 (coarse) and 7 (fine). They are loads a part withstands in a test, not tightening targets.
 * The printed load is kept where stress area times proof strength differs in the last figure (within 0.5 %).
 */
export const PROOF_LOADS = `
M3|8.8|2920|verified-1 ~ M3|10.9|4180|verified-1 ~ M3|12.9|4880|verified-1 ~ M4|8.8|5100|verified-1 ~ M4|10.9|7290|verified-1
M4|12.9|8520|verified-1 ~ M5|8.8|8230|verified-3 ~ M5|10.9|11800|verified-3 ~ M5|12.9|13800|verified-3 ~ M5|4.6|3200|verified-1
M5|4.8|4400|verified-1 ~ M5|5.6|3980|verified-1 ~ M5|5.8|5400|verified-1 ~ M5|6.8|6250|verified-1 ~ M5|9.8|9230|verified-1
M6|8.8|11600|verified-3 ~ M6|10.9|16700|verified-3 ~ M6|12.9|19500|verified-3 ~ M6|4.6|4520|verified-1 ~ M6|4.8|6230|verified-1
M6|5.6|5630|verified-1 ~ M6|5.8|7640|verified-1 ~ M6|6.8|8840|verified-1 ~ M6|9.8|13100|verified-1 ~ M8|8.8|21200|verified-3
M8|10.9|30400|verified-3 ~ M8|12.9|35500|verified-3 ~ M8|4.6|8240|verified-1 ~ M8|4.8|11400|verified-1 ~ M8|5.6|10200|verified-1
M8|5.8|13900|verified-1 ~ M8|6.8|16100|verified-1 ~ M8|9.8|23800|verified-1 ~ M10|8.8|33700|verified-3 ~ M10|10.9|48100|verified-3
M10|12.9|56300|verified-3 ~ M10|4.6|13000|verified-1 ~ M10|4.8|18000|verified-1 ~ M10|5.6|16200|verified-1
M10|5.8|22000|verified-1 ~ M10|6.8|25500|verified-1 ~ M10|9.8|37700|verified-1 ~ M12|8.8|48900|verified-3
M12|10.9|70000|verified-3 ~ M12|12.9|81800|verified-3 ~ M12|4.6|19000|verified-1 ~ M12|4.8|26100|verified-1
M12|5.6|23600|verified-1 ~ M12|5.8|32000|verified-1 ~ M12|6.8|37100|verified-1 ~ M12|9.8|54800|verified-1
M14|8.8|66700|verified-3 ~ M14|10.9|95500|verified-3 ~ M14|12.9|112000|verified-3 ~ M14|4.6|25900|verified-1
M14|4.8|35600|verified-1 ~ M14|5.6|32200|verified-1 ~ M14|5.8|43700|verified-1 ~ M14|6.8|50600|verified-1
M14|9.8|74800|verified-1 ~ M16|8.8|91000|verified-3 ~ M16|10.9|130000|verified-3 ~ M16|12.9|152000|verified-3
M16|4.6|35300|verified-1 ~ M16|4.8|48700|verified-1 ~ M16|5.6|44000|verified-1 ~ M16|5.8|59700|verified-1
M16|6.8|69100|verified-1 ~ M16|9.8|102000|verified-1 ~ M18|8.8|115000|verified-1 ~ M18|10.9|159000|verified-1
M18|12.9|186000|verified-1 ~ M20|8.8|147000|verified-1 ~ M20|10.9|203000|verified-1 ~ M20|12.9|238000|verified-1
M22|8.8|182000|verified-1 ~ M22|10.9|252000|verified-1 ~ M22|12.9|294000|verified-1 ~ M24|8.8|212000|verified-1
M24|10.9|293000|verified-1 ~ M24|12.9|342000|verified-1 ~ M8x1|8.8|22700|verified-1 ~ M8x1|10.9|32500|verified-1
M8x1|12.9|38000|verified-1 ~ M10x1.25|8.8|35500|verified-1 ~ M10x1.25|10.9|50800|verified-1 ~ M10x1.25|12.9|59400|verified-1
M10x1|8.8|37400|verified-1 ~ M10x1|10.9|53500|verified-1 ~ M10x1|12.9|62700|verified-1 ~ M12x1.5|8.8|51100|verified-1
M12x1.5|10.9|73100|verified-1 ~ M12x1.5|12.9|85500|verified-1 ~ M12x1.25|8.8|53400|verified-1 ~ M12x1.25|10.9|76400|verified-1
M12x1.25|12.9|89300|verified-1 ~ M14x1.5|8.8|72500|verified-1 ~ M14x1.5|10.9|104000|verified-1 ~ M14x1.5|12.9|121000|verified-1
M16x1.5|8.8|96900|verified-1 ~ M16x1.5|10.9|139000|verified-1 ~ M16x1.5|12.9|162000|verified-1
`;
