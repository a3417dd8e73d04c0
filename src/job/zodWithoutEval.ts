/**
 * Keeps zod from compiling its checks with `new Function`, which the page's content security policy forbids and would
 * report. zod asks while a schema is made, so this has to be the first import of every entry that reaches a schema.
 */
import { config } from "zod";

config({ jitless: true });
