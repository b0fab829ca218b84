/** Forms of a value as a scenario has them, and how one says them. */
const FORMS: readonly (readonly [form: RegExp, said: string])[] = [
  [/^\{ low: ([^,{}]+), likely: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $3, most likely $2'],
  [/^\{ low: ([^,{}]+), high: ([^,{}]+) \}$/, '$1 to $2'],
  [/^\{ mean: ([^,{}]+), cv: ([^,{}]+) \}$/, '$1 on average, spread $2 of it'],
  [/^\{ exponential: \{ mean: ([^,{}]+) \} \}$/, '$1 on average, exponential'],
];

/** `30 min to 4 h, most likely 75 min`; a form that is not known as the scenario has it. */
export function valueTold(value: string): string {
  const [form, said] = FORMS.find(([each]) => each.test(value)) ?? [];
  return form === undefined || said === undefined ? value : value.replace(form, said);
}
