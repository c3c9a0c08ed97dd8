/**
 * Metric O-rings: kind, key, cross section mm, its tolerance, inside diameter mm, its tolerance, equivalent, confidence, note.
 * Source: ISO 3601-1 (cross sections, class B tolerances), JIS B 2401-1 (P, G, V series), ISO 6149 (port seals).
 * Disagreement: the one copy of the class B formula prints the exponent 0.93; its own table fits only 0.95.
 */
export const METRIC_ORINGS = `
iso3601_cross_section|d2 1.80|1.80|0.08|||AS568 series 0 (1.78 mm, 0.070 in)|verified-2|class B (general industrial) cross-section tolerance; class A inch sizes use the AS568 tolerance; the metric and inch cross sections differ by 0.01 to 0.03 mm and share grooves
iso3601_cross_section|d2 2.65|2.65|0.09|||AS568 series 1 (2.62 mm, 0.103 in)|verified-2|class B (general industrial) cross-section tolerance; class A inch sizes use the AS568 tolerance; the metric and inch cross sections differ by 0.01 to 0.03 mm and share grooves
iso3601_cross_section|d2 3.55|3.55|0.10|||AS568 series 2 (3.53 mm, 0.139 in)|verified-2|class B (general industrial) cross-section tolerance; class A inch sizes use the AS568 tolerance; the metric and inch cross sections differ by 0.01 to 0.03 mm and share grooves
iso3601_cross_section|d2 5.30|5.30|0.13|||AS568 series 3 (5.33 mm, 0.210 in)|verified-2|class B (general industrial) cross-section tolerance; class A inch sizes use the AS568 tolerance; the metric and inch cross sections differ by 0.01 to 0.03 mm and share grooves
iso3601_cross_section|d2 7.00|7.00|0.15|||AS568 series 4 (6.99 mm, 0.275 in)|verified-2|class B (general industrial) cross-section tolerance; class A inch sizes use the AS568 tolerance; the metric and inch cross sections differ by 0.01 to 0.03 mm and share grooves
small_cross_section|AS568-001|1.02||||AS568-001|verified-4|single small inch sizes
small_cross_section|AS568-002|1.27||||AS568-002|verified-4|single small inch sizes
small_cross_section|AS568-003|1.52||||AS568-003|verified-4|single small inch sizes
class_B_cs_tolerance|0.80 to 2.25||0.08||||verified-1|range of cross section, tolerance is plus or minus
class_B_cs_tolerance|2.26 to 3.15||0.09||||verified-1|range of cross section, tolerance is plus or minus
class_B_cs_tolerance|3.16 to 4.50||0.10||||verified-1|range of cross section, tolerance is plus or minus
class_B_cs_tolerance|4.51 to 6.30||0.13||||verified-1|range of cross section, tolerance is plus or minus
class_B_cs_tolerance|6.31 to 8.40||0.15||||verified-1|range of cross section, tolerance is plus or minus
class_B_id_tolerance|d1 5|||5|0.15||verified-1|formula 0.009*d1^0.95 + 0.11 = 0.152; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 10|||10|0.19||verified-1|formula 0.009*d1^0.95 + 0.11 = 0.190; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 20|||20|0.26||verified-1|formula 0.009*d1^0.95 + 0.11 = 0.265; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 40|||40|0.41||verified-1|formula 0.009*d1^0.95 + 0.11 = 0.409; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 80|||80|0.69||verified-1|formula 0.009*d1^0.95 + 0.11 = 0.688; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 160|||160|1.23||verified-1|formula 0.009*d1^0.95 + 0.11 = 1.227; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 320|||320|2.27||verified-1|formula 0.009*d1^0.95 + 0.11 = 2.268; the copy prints the exponent as 0.93 but its own table fits only 0.95
class_B_id_tolerance|d1 640|||640|4.28||verified-1|formula 0.009*d1^0.95 + 0.11 = 4.280; the copy prints the exponent as 0.93 but its own table fits only 0.95
jis_cross_section|JIS B2401 P3-P10|1.9|0.08||||verified-1|dynamic and static; tolerance from memory
jis_cross_section|JIS B2401 P10A-P22|2.4|0.09||||verified-1|tolerance from memory
jis_cross_section|JIS B2401 P22A-P50|3.5|0.10||||verified-1|tolerance from memory
jis_cross_section|JIS B2401 P48A-P150|5.7|0.13||||verified-1|tolerance from memory
jis_cross_section|JIS B2401 P150A-P400|8.4|0.15||||verified-1|tolerance from memory
jis_cross_section|JIS B2401 G25-G145|3.1|0.10||||verified-1|static; tolerance from memory
jis_cross_section|JIS B2401 G150-G300|5.7|0.13||||verified-1|static; the copied size list runs on to G400; tolerance from memory
jis_cross_section|JIS B2401 V15-V175|4.0|0.10||||verified-1|vacuum flange; tolerance from memory
jis_cross_section|JIS B2401 V225-V430|6.0|0.15||||verified-1|vacuum flange; tolerance from memory
jis_cross_section|JIS B2401 V480-V1055|10.0|0.30||||verified-1|vacuum flange; tolerance from memory
common_non_iso_metric_cross_sections|1.0 1.5 2.0 2.5 3.0 3.5 4.0 5.0 6.0 8.0||||||memory|sold as plain metric rings (ID x CS) without a size standard; ISO 3601 does not list them
iso6149_port_seal|M8x1|1.6||6.1|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M10x1|1.6||8.1|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M12x1.5|2.2||9.3|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M14x1.5|2.2||11.3|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M16x1.5|2.2||13.3|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M18x1.5|2.2||15.3|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M22x1.5|2.2||19.3|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M27x2|2.9||23.6|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M33x2|2.9||29.6|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M42x2|2.9||38.6|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M48x2|2.9||44.6|||verified-1|stud-end O-ring for the metric port thread named in key
iso6149_port_seal|M60x2|2.9||56.6|||verified-1|stud-end O-ring for the metric port thread named in key
`;
