/** What is shown where the browser gives no storage at all: planning without keeping would lose entries. */
import { Notice } from "./controls/Notice.tsx";

export function StorageRefused({ error }: { readonly error: unknown }) {
  return (
    <main className="view surround">
      <h1>Tonebench</h1>
      <Notice kind="problem" announce>
        <p>This browser gives no storage to the page, so nothing you enter could be kept.</p>
        <p>
          A private window or a setting that blocks site data is the usual reason. Open it in a normal window.
        </p>
        <p>The browser says: {error instanceof Error ? error.message : String(error)}</p>
      </Notice>
    </main>
  );
}
