/** What has to be there, as the program is written: that it is not is a fault of ours. */
export function defined<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('expected a value that is always there, got none');
  return value;
}

/** Each value with the one behind it. */
export function neighbours<Value>(values: Iterable<Value>): [Value, Value][] {
  const pairs: [Value, Value][] = [];
  let before: { readonly value: Value } | undefined;
  for (const value of values) {
    if (before !== undefined) pairs.push([before.value, value]);
    before = { value };
  }
  return pairs;
}
