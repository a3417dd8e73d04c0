/** The sentence that names the records a prediction rests on most; asked of the engine, and empty where none taught. */
import { useEffect, useMemo, useState } from "react";
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import type { EvidenceLevel } from "../../core/prediction/prediction.ts";
import type { Teacher, TeachersRequest } from "../../engine/protocol.ts";
import { useLessons } from "../lessons.tsx";
import { type MatrixCandidate, type MatrixLine, matrixColumn, matrixRow } from "../matrix/matrixInputs.ts";
import { useEngine } from "../services.tsx";
import { useDocuments } from "../state/usePlanner.ts";
import { teachersSentence } from "../words/curveSentences.ts";
import { recordName } from "./recordName.ts";

interface Props {
  readonly line: MatrixLine;
  readonly column: MatrixCandidate;
  readonly viewing: Viewing;
  readonly evidence: EvidenceLevel;
}

/** A drag is over when nothing came for so long, in ms. Invented. */
const QUIET_MS = 250;

export function Teachers({ line, column, viewing, evidence }: Props) {
  const engine = useEngine();
  const { library } = useDocuments();
  const request = useMemo<TeachersRequest | null>(() => {
    const row = matrixRow(line);
    const asked = matrixColumn(column);
    return row === null || asked === null ? null : { row, column: asked, viewing };
  }, [line, column, viewing]);
  const { lessons } = useLessons();
  const [teachers, setTeachers] = useState<readonly Teacher[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew after each lesson
  useEffect(() => {
    if (request === null) return;
    let isWanted = true;
    const timer = setTimeout(() => {
      engine.teachers(request).then(
        (found) => {
          if (isWanted && found !== null) setTeachers(found);
        },
        () => {
          if (isWanted) setTeachers([]);
        },
      );
    }, QUIET_MS);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [engine, request, lessons]);
  const named = teachers.map(({ recordId, share }) => {
    const print = library.testPrints.find(({ id }) => id === recordId);
    if (print === undefined) return { name: "a goods-in check", share };
    const { garment, lot, day } = recordName(library, print);
    return { name: `${garment}${lot === "" ? "" : `, lot ${lot}`}, ${day}`, share };
  });
  const sentence = teachersSentence(named, evidence);
  return sentence === null ? null : <p>{sentence}</p>;
}
