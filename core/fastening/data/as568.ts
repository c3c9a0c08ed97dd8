/**
 * O-rings by dash number, in inches: dash, inside diameter, its tolerance, cross section, its tolerance, confidence, confidence of the tolerances, note.
 * Source: SAE AS568, table 1 (the latest revision was not at hand). Disagreements stand in the notes. A dash number says nothing about the compound.
 */
export const AS568 = `
001|0.029|0.004|0.040|0.003|verified-4|verified-2 ~ 002|0.042|0.004|0.050|0.003|verified-4|verified-2
003|0.056|0.004|0.060|0.003|verified-4|verified-2 ~ 004|0.070|0.005|0.070|0.003|verified-4|verified-2
005|0.101|0.005|0.070|0.003|verified-4|verified-2 ~ 006|0.114|0.005|0.070|0.003|verified-4|verified-2
007|0.145|0.005|0.070|0.003|verified-4|verified-2 ~ 008|0.176|0.005|0.070|0.003|verified-4|verified-2
009|0.208|0.005|0.070|0.003|verified-4|verified-2 ~ 010|0.239|0.005|0.070|0.003|verified-4|verified-2
011|0.301|0.005|0.070|0.003|verified-4|verified-2 ~ 012|0.364|0.005|0.070|0.003|verified-4|verified-2
013|0.426|0.005|0.070|0.003|verified-4|verified-2 ~ 014|0.489|0.005|0.070|0.003|verified-4|verified-2
015|0.551|0.007|0.070|0.003|verified-4|verified-2 ~ 016|0.614|0.009|0.070|0.003|verified-4|verified-2
017|0.676|0.009|0.070|0.003|verified-4|verified-2 ~ 018|0.739|0.009|0.070|0.003|verified-4|verified-2
019|0.801|0.009|0.070|0.003|verified-4|verified-2 ~ 020|0.864|0.009|0.070|0.003|verified-4|verified-2
021|0.926|0.009|0.070|0.003|verified-4|verified-2 ~ 022|0.989|0.010|0.070|0.003|verified-4|verified-2
023|1.051|0.010|0.070|0.003|verified-4|verified-2 ~ 024|1.114|0.010|0.070|0.003|verified-4|verified-2
025|1.176|0.011|0.070|0.003|verified-4|verified-2 ~ 026|1.239|0.011|0.070|0.003|verified-4|verified-2
027|1.301|0.011|0.070|0.003|verified-4|verified-2 ~ 028|1.364|0.013|0.070|0.003|verified-4|verified-2
029|1.489|0.013|0.070|0.003|verified-4|verified-2 ~ 030|1.614|0.013|0.070|0.003|verified-4|verified-2
031|1.739|0.015|0.070|0.003|verified-4|verified-2 ~ 032|1.864|0.015|0.070|0.003|verified-4|verified-2
033|1.989|0.018|0.070|0.003|verified-4|verified-2 ~ 034|2.114|0.018|0.070|0.003|verified-4|verified-2
035|2.239|0.018|0.070|0.003|verified-4|verified-2 ~ 036|2.364|0.018|0.070|0.003|verified-4|verified-2
037|2.489|0.018|0.070|0.003|verified-4|verified-2 ~ 038|2.614|0.020|0.070|0.003|verified-4|verified-2
039|2.739|0.020|0.070|0.003|verified-4|verified-2 ~ 040|2.864|0.020|0.070|0.003|verified-4|verified-2
041|2.989|0.024|0.070|0.003|verified-4|verified-2 ~ 042|3.239|0.024|0.070|0.003|verified-4|verified-2
043|3.489|0.024|0.070|0.003|verified-4|verified-2 ~ 044|3.739|0.027|0.070|0.003|verified-4|verified-2
045|3.989|0.027|0.070|0.003|verified-4|verified-2 ~ 046|4.239|0.030|0.070|0.003|verified-4|verified-2
047|4.489|0.030|0.070|0.003|verified-4|verified-2 ~ 048|4.739|0.030|0.070|0.003|verified-4|verified-2
049|4.989|0.037|0.070|0.003|verified-4|verified-2 ~ 050|5.239|0.037|0.070|0.003|verified-4|verified-2
102|0.049|0.005|0.103|0.003|verified-5|verified-3 ~ 103|0.081|0.005|0.103|0.003|verified-5|verified-3
104|0.112|0.005|0.103|0.003|verified-5|verified-3 ~ 105|0.143|0.005|0.103|0.003|verified-5|verified-3
106|0.174|0.005|0.103|0.003|verified-5|verified-3 ~ 107|0.206|0.005|0.103|0.003|verified-5|verified-3
108|0.237|0.005|0.103|0.003|verified-5|verified-3 ~ 109|0.299|0.005|0.103|0.003|verified-5|verified-3
110|0.362|0.005|0.103|0.003|verified-5|verified-3 ~ 111|0.424|0.005|0.103|0.003|verified-5|verified-3
112|0.487|0.005|0.103|0.003|verified-5|verified-3 ~ 113|0.549|0.007|0.103|0.003|verified-5|verified-3
114|0.612|0.009|0.103|0.003|verified-5|verified-3 ~ 115|0.674|0.009|0.103|0.003|verified-5|verified-3
116|0.737|0.009|0.103|0.003|verified-5|verified-3 ~ 117|0.799|0.010|0.103|0.003|verified-5|verified-3
118|0.862|0.010|0.103|0.003|verified-5|verified-3 ~ 119|0.924|0.010|0.103|0.003|verified-5|verified-3
120|0.987|0.010|0.103|0.003|verified-5|verified-3 ~ 121|1.049|0.010|0.103|0.003|verified-5|verified-3
122|1.112|0.010|0.103|0.003|verified-5|verified-3 ~ 123|1.174|0.012|0.103|0.003|verified-5|verified-3
124|1.237|0.012|0.103|0.003|verified-5|verified-3 ~ 125|1.299|0.012|0.103|0.003|verified-5|verified-3
126|1.362|0.012|0.103|0.003|verified-5|verified-3 ~ 127|1.424|0.012|0.103|0.003|verified-5|verified-3
128|1.487|0.012|0.103|0.003|verified-5|verified-3 ~ 129|1.549|0.015|0.103|0.003|verified-5|verified-3
130|1.612|0.015|0.103|0.003|verified-5|verified-3 ~ 131|1.674|0.015|0.103|0.003|verified-5|verified-3
132|1.737|0.015|0.103|0.003|verified-5|verified-3 ~ 133|1.799|0.015|0.103|0.003|verified-5|verified-3
134|1.862|0.015|0.103|0.003|verified-5|verified-3 ~ 135|1.925|0.017|0.103|0.003|verified-5|verified-3
136|1.987|0.017|0.103|0.003|verified-5|verified-3 ~ 137|2.050|0.017|0.103|0.003|verified-5|verified-3
138|2.112|0.017|0.103|0.003|verified-5|verified-3 ~ 139|2.175|0.017|0.103|0.003|verified-5|verified-3
140|2.237|0.017|0.103|0.003|verified-5|verified-3 ~ 141|2.300|0.020|0.103|0.003|verified-5|verified-3
142|2.362|0.020|0.103|0.003|verified-5|verified-3 ~ 143|2.425|0.020|0.103|0.003|verified-5|verified-3
144|2.487|0.020|0.103|0.003|verified-5|verified-3 ~ 145|2.550|0.020|0.103|0.003|verified-5|verified-3
146|2.612|0.020|0.103|0.003|verified-5|verified-3 ~ 147|2.675|0.022|0.103|0.003|verified-5|verified-3
148|2.737|0.022|0.103|0.003|verified-5|verified-3 ~ 149|2.800|0.022|0.103|0.003|verified-5|verified-3
150|2.862|0.022|0.103|0.003|verified-5|verified-3 ~ 151|2.987|0.024|0.103|0.003|verified-5|verified-3
152|3.237|0.024|0.103|0.003|verified-5|verified-3 ~ 153|3.487|0.024|0.103|0.003|verified-5|verified-3
154|3.737|0.028|0.103|0.003|verified-5|verified-3 ~ 155|3.987|0.028|0.103|0.003|verified-5|verified-3
156|4.237|0.030|0.103|0.003|verified-5|verified-3 ~ 157|4.487|0.030|0.103|0.003|verified-5|verified-3
158|4.737|0.030|0.103|0.003|verified-5|verified-3 ~ 159|4.987|0.035|0.103|0.003|verified-5|verified-3
160|5.237|0.035|0.103|0.003|verified-5|verified-3 ~ 161|5.487|0.035|0.103|0.003|verified-5|verified-3
162|5.737|0.035|0.103|0.003|verified-5|verified-3 ~ 163|5.987|0.035|0.103|0.003|verified-5|verified-3
164|6.237|0.040|0.103|0.003|verified-5|verified-3 ~ 165|6.487|0.040|0.103|0.003|verified-5|verified-3
166|6.737|0.040|0.103|0.003|verified-5|verified-3 ~ 167|6.987|0.040|0.103|0.003|verified-5|verified-3
168|7.237|0.045|0.103|0.003|verified-5|verified-3 ~ 169|7.487|0.045|0.103|0.003|verified-5|verified-3
170|7.737|0.045|0.103|0.003|verified-5|verified-3 ~ 171|7.987|0.045|0.103|0.003|verified-5|verified-3
172|8.237|0.050|0.103|0.003|verified-5|verified-3 ~ 173|8.487|0.050|0.103|0.003|verified-5|verified-3
174|8.737|0.050|0.103|0.003|verified-5|verified-3 ~ 175|8.987|0.050|0.103|0.003|verified-5|verified-3
176|9.237|0.055|0.103|0.003|verified-5|verified-3 ~ 177|9.487|0.055|0.103|0.003|verified-5|verified-3
178|9.737|0.055|0.103|0.003|verified-5|verified-3 ~ 201|0.171|0.005|0.139|0.004|verified-5|verified-3
202|0.234|0.005|0.139|0.004|verified-5|verified-3 ~ 203|0.296|0.005|0.139|0.004|verified-5|verified-3
204|0.359|0.005|0.139|0.004|verified-5|verified-3 ~ 205|0.421|0.005|0.139|0.004|verified-5|verified-3
206|0.484|0.005|0.139|0.004|verified-5|verified-3 ~ 207|0.546|0.007|0.139|0.004|verified-5|verified-3
208|0.609|0.009|0.139|0.004|verified-5|verified-3 ~ 209|0.671|0.009|0.139|0.004|verified-5|verified-3
210|0.734|0.010|0.139|0.004|verified-5|verified-3 ~ 211|0.796|0.010|0.139|0.004|verified-5|verified-3
212|0.859|0.010|0.139|0.004|verified-5|verified-3 ~ 213|0.921|0.010|0.139|0.004|verified-5|verified-3
214|0.984|0.010|0.139|0.004|verified-5|verified-3 ~ 215|1.046|0.010|0.139|0.004|verified-5|verified-3
216|1.109|0.012|0.139|0.004|verified-5|verified-3 ~ 217|1.171|0.012|0.139|0.004|verified-5|verified-3
218|1.234|0.012|0.139|0.004|verified-5|verified-3 ~ 219|1.296|0.012|0.139|0.004|verified-5|verified-3
220|1.359|0.012|0.139|0.004|verified-5|verified-3 ~ 221|1.421|0.012|0.139|0.004|verified-5|verified-3
222|1.484|0.015|0.139|0.004|verified-5|verified-3 ~ 223|1.609|0.015|0.139|0.004|verified-5|verified-3
224|1.734|0.015|0.139|0.004|verified-5|verified-3
225|1.859|0.018|0.139|0.004|verified-5|doubtful (2 of 3 copies)|ID tolerance disputed: 0.018 in two copies, 0.015 in one
226|1.984|0.018|0.139|0.004|verified-5|verified-3 ~ 227|2.109|0.018|0.139|0.004|verified-5|verified-3
228|2.234|0.020|0.139|0.004|verified-5|verified-3 ~ 229|2.359|0.020|0.139|0.004|verified-5|verified-3
230|2.484|0.020|0.139|0.004|verified-5|verified-3 ~ 231|2.609|0.020|0.139|0.004|verified-5|verified-3
232|2.734|0.024|0.139|0.004|verified-5|verified-3 ~ 233|2.859|0.024|0.139|0.004|verified-5|verified-3
234|2.984|0.024|0.139|0.004|verified-5|verified-3 ~ 235|3.109|0.024|0.139|0.004|verified-5|verified-3
236|3.234|0.024|0.139|0.004|verified-5|verified-3 ~ 237|3.359|0.024|0.139|0.004|verified-5|verified-3
238|3.484|0.024|0.139|0.004|verified-5|verified-3
239|3.609|0.028|0.139|0.004|verified-5|doubtful (2 of 3 copies)|ID tolerance disputed: 0.028 in two copies, 0.024 in one
240|3.734|0.028|0.139|0.004|verified-5|verified-3 ~ 241|3.859|0.028|0.139|0.004|verified-5|verified-3
242|3.984|0.028|0.139|0.004|verified-5|verified-3 ~ 243|4.109|0.028|0.139|0.004|verified-5|verified-3
244|4.234|0.030|0.139|0.004|verified-5|verified-3 ~ 245|4.359|0.030|0.139|0.004|verified-5|verified-3
246|4.484|0.030|0.139|0.004|verified-5|verified-3 ~ 247|4.609|0.030|0.139|0.004|verified-5|verified-3
248|4.734|0.030|0.139|0.004|verified-5|verified-3 ~ 249|4.859|0.035|0.139|0.004|verified-5|verified-3
250|4.984|0.035|0.139|0.004|verified-5|verified-3 ~ 251|5.109|0.035|0.139|0.004|verified-5|verified-3
252|5.234|0.035|0.139|0.004|verified-5|verified-3 ~ 253|5.359|0.035|0.139|0.004|verified-5|verified-3
254|5.484|0.035|0.139|0.004|verified-5|verified-3 ~ 255|5.609|0.035|0.139|0.004|verified-5|verified-3
256|5.734|0.035|0.139|0.004|verified-5|verified-3 ~ 257|5.859|0.035|0.139|0.004|verified-5|verified-3
258|5.984|0.035|0.139|0.004|verified-5|verified-3 ~ 259|6.234|0.040|0.139|0.004|verified-5|verified-3
260|6.484|0.040|0.139|0.004|verified-5|verified-3 ~ 261|6.734|0.040|0.139|0.004|verified-5|verified-3
262|6.984|0.040|0.139|0.004|verified-5|verified-3 ~ 263|7.234|0.045|0.139|0.004|verified-5|verified-3
264|7.484|0.045|0.139|0.004|verified-5|verified-3 ~ 265|7.734|0.045|0.139|0.004|verified-5|verified-3
266|7.984|0.045|0.139|0.004|verified-5|verified-3 ~ 267|8.234|0.050|0.139|0.004|verified-5|verified-3
268|8.484|0.050|0.139|0.004|verified-5|verified-3 ~ 269|8.734|0.050|0.139|0.004|verified-5|verified-3
270|8.984|0.050|0.139|0.004|verified-5|verified-3 ~ 271|9.234|0.055|0.139|0.004|verified-5|verified-3
272|9.484|0.055|0.139|0.004|verified-5|verified-3 ~ 273|9.734|0.055|0.139|0.004|verified-5|verified-3
274|9.984|0.055|0.139|0.004|verified-5|verified-3 ~ 275|10.484|0.055|0.139|0.004|verified-5|verified-3
276|10.984|0.065|0.139|0.004|verified-5|verified-3 ~ 277|11.484|0.065|0.139|0.004|verified-5|verified-3
278|11.984|0.065|0.139|0.004|verified-5|verified-3 ~ 279|12.984|0.065|0.139|0.004|verified-5|verified-3
280|13.984|0.065|0.139|0.004|verified-5|verified-3 ~ 281|14.984|0.065|0.139|0.004|verified-5|verified-3
282|15.955|0.075|0.139|0.004|verified-5|verified-3 ~ 283|16.955|0.080|0.139|0.004|verified-5|verified-3
284|17.955|0.085|0.139|0.004|verified-5|verified-3 ~ 309|0.412|0.005|0.210|0.005|verified-5|verified-3
310|0.475|0.005|0.210|0.005|verified-5|verified-3 ~ 311|0.537|0.007|0.210|0.005|verified-5|verified-3
312|0.600|0.009|0.210|0.005|verified-5|verified-3 ~ 313|0.662|0.009|0.210|0.005|verified-5|verified-3
314|0.725|0.010|0.210|0.005|verified-5|verified-3 ~ 315|0.787|0.010|0.210|0.005|verified-5|verified-3
316|0.850|0.010|0.210|0.005|verified-5|verified-3 ~ 317|0.912|0.010|0.210|0.005|verified-5|verified-3
318|0.975|0.010|0.210|0.005|verified-5|verified-3
319|1.037|0.010|0.210|0.005|verified-4|verified-3|ID: another copy prints 1.034
320|1.100|0.012|0.210|0.005|verified-5|verified-3 ~ 321|1.162|0.012|0.210|0.005|verified-5|verified-3
322|1.225|0.012|0.210|0.005|verified-5|verified-3 ~ 323|1.287|0.012|0.210|0.005|verified-5|verified-3
324|1.350|0.012|0.210|0.005|verified-5|verified-3 ~ 325|1.475|0.015|0.210|0.005|verified-5|verified-3
326|1.600|0.015|0.210|0.005|verified-5|verified-3 ~ 327|1.725|0.015|0.210|0.005|verified-5|verified-3
328|1.850|0.015|0.210|0.005|verified-5|verified-3 ~ 329|1.975|0.018|0.210|0.005|verified-5|verified-3
330|2.100|0.018|0.210|0.005|verified-5|verified-3 ~ 331|2.225|0.018|0.210|0.005|verified-5|verified-3
332|2.350|0.018|0.210|0.005|verified-5|verified-3 ~ 333|2.475|0.020|0.210|0.005|verified-5|verified-3
334|2.600|0.020|0.210|0.005|verified-5|verified-3 ~ 335|2.725|0.020|0.210|0.005|verified-5|verified-3
336|2.850|0.020|0.210|0.005|verified-5|verified-3 ~ 337|2.975|0.024|0.210|0.005|verified-5|verified-3
338|3.100|0.024|0.210|0.005|verified-5|verified-3 ~ 339|3.225|0.024|0.210|0.005|verified-5|verified-3
340|3.350|0.024|0.210|0.005|verified-5|verified-3 ~ 341|3.475|0.024|0.210|0.005|verified-5|verified-3
342|3.600|0.028|0.210|0.005|verified-5|verified-3 ~ 343|3.725|0.028|0.210|0.005|verified-5|verified-3
344|3.850|0.028|0.210|0.005|verified-5|verified-3 ~ 345|3.975|0.028|0.210|0.005|verified-5|verified-3
346|4.100|0.028|0.210|0.005|verified-5|verified-3 ~ 347|4.225|0.030|0.210|0.005|verified-5|verified-3
348|4.350|0.030|0.210|0.005|verified-5|verified-3 ~ 349|4.475|0.030|0.210|0.005|verified-5|verified-3
350|4.600|0.030|0.210|0.005|verified-5|verified-3 ~ 351|4.725|0.030|0.210|0.005|verified-5|verified-3
352|4.850|0.030|0.210|0.005|verified-5|verified-3 ~ 353|4.975|0.037|0.210|0.005|verified-5|verified-3
354|5.100|0.037|0.210|0.005|verified-5|verified-3 ~ 355|5.225|0.037|0.210|0.005|verified-5|verified-3
356|5.350|0.037|0.210|0.005|verified-5|verified-3 ~ 357|5.475|0.037|0.210|0.005|verified-5|verified-3
358|5.600|0.037|0.210|0.005|verified-5|verified-3 ~ 359|5.725|0.037|0.210|0.005|verified-5|verified-3
360|5.850|0.037|0.210|0.005|verified-5|verified-3 ~ 361|5.975|0.037|0.210|0.005|verified-5|verified-3
362|6.225|0.040|0.210|0.005|verified-5|verified-3 ~ 363|6.475|0.040|0.210|0.005|verified-5|verified-3
364|6.725|0.040|0.210|0.005|verified-5|verified-3 ~ 365|6.975|0.040|0.210|0.005|verified-5|verified-3
366|7.225|0.045|0.210|0.005|verified-5|verified-3 ~ 367|7.475|0.045|0.210|0.005|verified-5|verified-3
368|7.725|0.045|0.210|0.005|verified-5|verified-3 ~ 369|7.975|0.045|0.210|0.005|verified-5|verified-3
370|8.225|0.050|0.210|0.005|verified-5|verified-3 ~ 371|8.475|0.050|0.210|0.005|verified-5|verified-3
372|8.725|0.050|0.210|0.005|verified-5|verified-3 ~ 373|8.975|0.050|0.210|0.005|verified-5|verified-3
374|9.225|0.055|0.210|0.005|verified-5|verified-3 ~ 375|9.475|0.055|0.210|0.005|verified-5|verified-3
376|9.725|0.055|0.210|0.005|verified-5|verified-3 ~ 377|9.975|0.055|0.210|0.005|verified-5|verified-3
378|10.475|0.060|0.210|0.005|verified-5|verified-3 ~ 379|10.975|0.060|0.210|0.005|verified-5|verified-3
380|11.475|0.065|0.210|0.005|verified-5|verified-3 ~ 381|11.975|0.065|0.210|0.005|verified-5|verified-3
382|12.975|0.065|0.210|0.005|verified-5|verified-3 ~ 383|13.975|0.070|0.210|0.005|verified-5|verified-3
384|14.975|0.070|0.210|0.005|verified-5|verified-3 ~ 385|15.955|0.075|0.210|0.005|verified-5|verified-3
386|16.955|0.080|0.210|0.005|verified-5|doubtful (2 of 3 copies)|ID tolerance disputed: 0.080 in two copies, 0.075 in one
387|17.955|0.085|0.210|0.005|verified-5|verified-3 ~ 388|18.955|0.090|0.210|0.005|verified-5|verified-3
389|19.955|0.095|0.210|0.005|verified-5|verified-3 ~ 390|20.955|0.095|0.210|0.005|verified-5|verified-3
391|21.955|0.100|0.210|0.005|verified-4|verified-2 ~ 392|22.940|0.105|0.210|0.005|verified-4|verified-2
393|23.940|0.110|0.210|0.005|verified-4|verified-2 ~ 394|24.940|0.115|0.210|0.005|verified-4|verified-2
395|25.940|0.120|0.210|0.005|verified-4|verified-2 ~ 425|4.475|0.033|0.275|0.006|verified-5|verified-3
426|4.600|0.033|0.275|0.006|verified-5|verified-3 ~ 427|4.725|0.033|0.275|0.006|verified-5|verified-3
428|4.850|0.033|0.275|0.006|verified-5|verified-3 ~ 429|4.975|0.037|0.275|0.006|verified-5|verified-3
430|5.100|0.037|0.275|0.006|verified-5|verified-3 ~ 431|5.225|0.037|0.275|0.006|verified-5|verified-3
432|5.350|0.037|0.275|0.006|verified-5|verified-3 ~ 433|5.475|0.037|0.275|0.006|verified-5|verified-3
434|5.600|0.037|0.275|0.006|verified-5|verified-3 ~ 435|5.725|0.037|0.275|0.006|verified-5|verified-3
436|5.850|0.037|0.275|0.006|verified-5|verified-3 ~ 437|5.975|0.037|0.275|0.006|verified-5|verified-3
438|6.225|0.040|0.275|0.006|verified-5|verified-3 ~ 439|6.475|0.040|0.275|0.006|verified-5|verified-3
440|6.725|0.040|0.275|0.006|verified-5|verified-3 ~ 441|6.975|0.040|0.275|0.006|verified-5|verified-3
442|7.225|0.045|0.275|0.006|verified-5|verified-3 ~ 443|7.475|0.045|0.275|0.006|verified-5|verified-3
444|7.725|0.045|0.275|0.006|verified-5|verified-3 ~ 445|7.975|0.045|0.275|0.006|verified-5|verified-3
446|8.475|0.055|0.275|0.006|verified-5|verified-3 ~ 447|8.975|0.055|0.275|0.006|verified-5|verified-3
448|9.475|0.055|0.275|0.006|verified-5|verified-3 ~ 449|9.975|0.055|0.275|0.006|verified-5|verified-3
450|10.475|0.060|0.275|0.006|verified-5|verified-3 ~ 451|10.975|0.060|0.275|0.006|verified-5|verified-3
452|11.475|0.060|0.275|0.006|verified-5|verified-3 ~ 453|11.975|0.060|0.275|0.006|verified-5|verified-3
454|12.475|0.060|0.275|0.006|verified-5|verified-3 ~ 455|12.975|0.060|0.275|0.006|verified-5|verified-3
456|13.475|0.070|0.275|0.006|verified-4|verified-3|ID: one supplier table prints 13.457, digits swapped
457|13.975|0.070|0.275|0.006|verified-5|verified-3 ~ 458|14.475|0.070|0.275|0.006|verified-5|verified-3
459|14.975|0.070|0.275|0.006|verified-5|verified-3 ~ 460|15.475|0.070|0.275|0.006|verified-5|verified-3
461|15.955|0.075|0.275|0.006|verified-5|verified-3 ~ 462|16.455|0.075|0.275|0.006|verified-5|verified-3
463|16.955|0.080|0.275|0.006|verified-5|verified-3 ~ 464|17.455|0.085|0.275|0.006|verified-5|verified-3
465|17.955|0.085|0.275|0.006|verified-5|verified-3 ~ 466|18.455|0.085|0.275|0.006|verified-5|verified-3
467|18.955|0.090|0.275|0.006|verified-5|verified-3 ~ 468|19.455|0.090|0.275|0.006|verified-4|verified-2
469|19.955|0.090|0.275|0.006|verified-4|doubtful (1 of 2 copies)|ID tolerance disputed: 0.090 or 0.095
470|20.955|0.090|0.275|0.006|verified-4|doubtful (1 of 2 copies)|ID tolerance disputed: 0.090 or 0.095
471|21.955|0.100|0.275|0.006|verified-5|verified-3 ~ 472|22.940|0.105|0.275|0.006|verified-5|verified-3
473|23.940|0.110|0.275|0.006|verified-5|verified-3 ~ 474|24.940|0.115|0.275|0.006|verified-5|verified-3
475|25.940|0.120|0.275|0.006|verified-5|verified-3 ~ 901|0.185|0.005|0.056|0.003|verified-4|verified-2
902|0.239|0.005|0.064|0.003|verified-4|verified-2 ~ 903|0.301|0.005|0.064|0.003|verified-4|verified-2
904|0.351|0.005|0.072|0.003|verified-4|verified-2 ~ 905|0.414|0.005|0.072|0.003|verified-4|verified-2
906|0.468|0.005|0.078|0.003|verified-4|verified-2 ~ 907|0.530|0.007|0.082|0.003|verified-4|verified-2
908|0.644|0.009|0.087|0.003|verified-4|verified-2 ~ 909|0.706|0.009|0.097|0.003|verified-4|verified-2
910|0.755|0.009|0.097|0.003|verified-4|verified-2 ~ 911|0.863|0.009|0.116|0.004|verified-4|verified-2
912|0.924|0.009|0.116|0.004|verified-4|verified-2 ~ 913|0.986|0.010|0.116|0.004|verified-4|verified-2
914|1.047|0.010|0.116|0.004|verified-4|verified-2 ~ 916|1.171|0.010|0.116|0.004|verified-4|verified-2
918|1.355|0.012|0.116|0.004|verified-4|verified-2
920|1.475|0.014|0.118|0.004|verified-3|verified-2|CS: one supplier table prints 0.116
924|1.720|0.014|0.118|0.004|verified-3|verified-2|CS: one supplier table prints 0.116
928|2.090|0.018|0.118|0.004|verified-3|verified-2|CS: one supplier table prints 0.116
932|2.337|0.018|0.118|0.004|verified-3|verified-2|CS: one supplier table prints 0.116
`;
