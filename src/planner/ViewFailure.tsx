/** Catches what fails inside a view, so that the job's line, the other views and the saving go on. */
import { Component, type ReactNode } from "react";
import { ActionButton } from "./controls/ActionButton.tsx";
import { Notice } from "./controls/Notice.tsx";

interface Props {
  readonly children: ReactNode;
}

interface State {
  readonly failure: string | null;
}

export class ViewFailure extends Component<Props, State> {
  override state: State = { failure: null };

  static getDerivedStateFromError(error: unknown): State {
    return { failure: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.failure === null) return this.props.children;
    return (
      <div className="view">
        <Notice kind="problem" announce>
          <p>This view stopped: {this.state.failure}</p>
          <p>What you entered is not touched by it. Another view can be opened, or this one tried again.</p>
          <ActionButton onClick={() => this.setState({ failure: null })}>Try again</ActionButton>
        </Notice>
      </div>
    );
  }
}
