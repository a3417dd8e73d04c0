/** The matrix: what each garment will look like under each mix, how sure that is, and which mix is chosen. */
import { useState } from "react";
import { addPlace, newPlace } from "../../job/edits/places.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { newId } from "../state/identity.ts";
import { useDocuments, usePlanner } from "../state/usePlanner.ts";
import { MatrixOfPlace } from "./MatrixOfPlace.tsx";
import "./matrix.css";
import "./cell.css";
import "./detail.css";
import "./mixDialog.css";
import "./oneGarment.css";
import "./paper.css";
import "./place.css";

export default function MatrixView() {
  const documents = useDocuments();
  const edit = usePlanner((state) => state.edit);
  const { address } = useJobAddress();
  const [addedId] = useState(newId);
  const { job } = documents;
  const place = job.places.find(({ id }) => id === address.place) ?? job.places[0];
  if (place === undefined) {
    return (
      <div className="view">
        <div className="view__head">
          <h2>Matrix</h2>
        </div>
        <p>No print place is in this job yet. Add one to see what its garments would look like.</p>
        <p>
          <ActionButton onClick={() => edit((now) => addPlace(now, newPlace(addedId, "Front")))}>
            Add a print place
          </ActionButton>
        </p>
      </div>
    );
  }
  if (job.lines.length === 0) {
    return (
      <div className="view">
        <div className="view__head">
          <h2>Matrix</h2>
        </div>
        <p>
          No garment is in this job yet.{" "}
          <a href={printAddress({ ...address, view: "garments" })}>Add the first garment</a>, then come back.
        </p>
      </div>
    );
  }
  return <MatrixOfPlace key={place.id} documents={documents} place={place} />;
}
