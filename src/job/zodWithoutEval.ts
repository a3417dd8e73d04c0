/**
 * Keeps zod from compiling its checks with `new Function`, which the page's content security policy forbids and would
 * report. zod asks while a schema is made, so this is the first import of the two schema files that all others stand
 * on, and not of an entry: a bundler may run an entry's imports after those of a shared chunk.
 */
import { config } from "zod";

config({ jitless: true });
