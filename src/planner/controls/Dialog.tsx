/** A question that has to be answered before anything else: the browser's own modal dialog, which keeps the focus inside. */
import { type ReactNode, useEffect, useId, useRef } from "react";

interface Props {
  readonly title: string;
  readonly children: ReactNode;
  /** The buttons, the harmless one first. */
  readonly actions: ReactNode;
  /** Called for Escape too. */
  readonly onClose: () => void;
}

export function Dialog({ title, children, actions, onClose }: Props) {
  const element = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = element.current;
    const before = document.activeElement;
    dialog?.showModal();
    return () => {
      dialog?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={element}
      className="dialog panel"
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog__body">
        <h2 id={titleId}>{title}</h2>
        {children}
        <div className="dialog__actions">{actions}</div>
      </div>
    </dialog>
  );
}
