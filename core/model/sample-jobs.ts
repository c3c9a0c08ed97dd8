/** Ids of the three copies of the sample job that comes with the program; a test holds them to its job files. */
export const SAMPLE_JOBS: readonly string[] = [
  '01a21493-b088-701f-abd7-b1259395492a',
  '01a21493-bad5-73ca-b7ed-7ecf14a610b9',
  '01a21493-c872-72d9-998d-7edbf598cde8',
];
