/** The innermost loops of a prediction as WebAssembly, two bands at a time, where the machine running this has it. */
import { BAND_KERNEL_CODE } from "./bandKernelCode.ts";

/** Functions of bandKernel.wat; places are byte addresses of `memory`. */
interface KernelCode {
  readonly memory: { readonly buffer: ArrayBuffer };
  addFibre(
    ks: number,
    sum: number,
    factor: number,
    mass: number,
    m: number,
    floor: number,
    fresh: 0 | 1,
    start: number,
    bytes: number,
  ): void;
  remix(sum: number, m: number, floor: number, bytes: number): void;
  seenOver(
    ks: number,
    factor: number,
    cloth: number,
    film: number,
    weights: number,
    out: number,
    both: number,
    inside: number,
    k2: number,
  ): void;
  seenOverEach(
    factors: number,
    end: number,
    films: number,
    count: number,
    ks: number,
    cloth: number,
    weights: number,
    out: number,
    both: number,
    inside: number,
    k2: number,
    bytes: number,
  ): void;
  compress(at: number, end: number, scale: number, offset: number): void;
  hueShifts(
    at: number,
    end: number,
    a: number,
    b: number,
    chroma: number,
    error: number,
    least: number,
    most: number,
  ): void;
  surfaceAt(surface: number, xs: number, ys: number, out: number, pairs: number): void;
}

export interface BandKernel extends KernelCode {
  /** The kernel's memory as numbers of 8 bytes. */
  readonly numbers: Float64Array;
}

interface WebAssemblyOfHost {
  readonly Module: new (code: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
}

declare const atob: (base64: string) => string;

/** Null where there is no WebAssembly, no SIMD in it, or a page that forbids it: plain code then does the same. */
function startedKernel(): BandKernel | null {
  const host = (globalThis as { WebAssembly?: WebAssemblyOfHost }).WebAssembly;
  if (host === undefined) return null;
  try {
    const code = Uint8Array.from(atob(BAND_KERNEL_CODE), (character) => character.charCodeAt(0));
    const started = new host.Instance(new host.Module(code)).exports as KernelCode;
    return {
      memory: started.memory,
      addFibre: started.addFibre,
      remix: started.remix,
      seenOver: started.seenOver,
      seenOverEach: started.seenOverEach,
      compress: started.compress,
      hueShifts: started.hueShifts,
      surfaceAt: started.surfaceAt,
      numbers: new Float64Array(started.memory.buffer),
    };
  } catch {
    return null;
  }
}

export const bandKernel: BandKernel | null = startedKernel();
