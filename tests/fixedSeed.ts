// Every property test draws the same cases on every run; a failure is repeatable from the log alone.
import fc from "fast-check";

fc.configureGlobal({ seed: 20260217, numRuns: 100 });
