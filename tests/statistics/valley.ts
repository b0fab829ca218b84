/**
 * Two trucks of three leave by timetable: a fourth place in the bank lets trucks leave as 3 + 1 and costs 0.35
 * a day; beyond it lies a better layout that steps of one place do not lead to. Every fortnight the ferry is
 * out for two days.
 */
export function valley(quantity: number, { bank, buffer }: { bank: number; buffer: number }): string {
  const day = (after: number): string => new Date(Date.UTC(2027, 2, 9 + after)).toISOString().slice(0, 10);
  const outages = Array.from(
    { length: 33 },
    (_, i) => `  - { lanes: [ferry], from: ${day(14 * i)}, to: ${day(14 * i + 1)} }`,
  );
  return `
scenario: A valley between two good banks
programme: { start: 2027-03-01, quantity: ${quantity}, rate: { per day: 6 } }
calendars: { days: { hours: ["06:00-14:00"] } }
sites:
  a: { calendar: days, stations: { press: {} } }
  b: { calendar: days, stations: { fit: { buffer: ${buffer} } } }
lanes:
  ferry: { from: a, to: b, trucks: 2, capacity: 3, drive: 8 h, return: 8 h, leaves: { at: ["07:00", "13:00"] }, bank: ${bank} }
outages:
${outages.join('\n')}
route:
  - { step: press, at: press, work: { mean: 80 min, cv: 0.3 } }
  - { lane: ferry }
  - { step: fit, at: fit, work: { mean: 78 min, cv: 0.3 } }
`;
}
