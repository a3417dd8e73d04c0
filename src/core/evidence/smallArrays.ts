/** Many short arrays of numbers out of few long ones: an array of its own costs a thousand records more than its contents. */

const CHUNK_LENGTH = 8192;

let chunk: Float64Array = new Float64Array(CHUNK_LENGTH);
let used = 0;

/** `length` zeros, for whoever asks alone; a view into a longer array. */
export function smallArray(length: number): Float64Array {
  if (used + length > chunk.length) {
    chunk = new Float64Array(Math.max(CHUNK_LENGTH, length));
    used = 0;
  }
  used += length;
  return chunk.subarray(used - length, used);
}

/** The first `length` of `values` (all, if not said). */
export function smallCopy(values: Float64Array, length = values.length): Float64Array {
  const copy = smallArray(length);
  for (let i = 0; i < length; i++) copy[i] = values[i]!;
  return copy;
}
