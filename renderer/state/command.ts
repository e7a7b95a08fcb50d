import type { Draft } from 'immer';
import type { Problem } from '../../engine/base/index.ts';
import type { CommandLabel } from '../../engine/messages/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import type { Workspace } from '../draw/drawState.ts';
import type { AppState, DocumentState, PreferenceState, SessionState } from './appState.ts';
import type { FileActions } from './sitting.ts';

/*
 * Commands are data. Everything that changes the document, the sitting or a preference is one of them, so that the dispatcher makes
 * the undo steps and no author can forget them.
 */

interface CommandBase {
  /** Key of its label in the catalogue. */
  readonly label: CommandLabel;
  /** Keys that run it without arguments, e.g. `Mod+Z`; `Mod` is Ctrl, on a Mac the command key. */
  readonly shortcuts?: readonly string[];
  readonly isEnabled: (state: AppState) => boolean;
  /** Words besides its label by which it is found among all commands. */
  readonly keywords?: readonly string[];
  /** The browser's own event runs it, which alone may use the clipboard: the keys are only told. */
  readonly byEvent?: true;
  /** The workspace in which alone its keys are heard; without it they are heard in all. */
  readonly keysIn?: Workspace;
}

/** Changes the document: one undo step, made by the dispatcher from the patches. */
export interface DocumentCommand<A> extends CommandBase {
  readonly kind: 'document';
  /** `step`: each run is a step; otherwise runs of an equal key that follow each other are one. */
  readonly undo: 'step' | { readonly mergeBy: (args: A) => string };
  /** What stands after "Undo": "quiet at -TB2". */
  readonly name: (state: AppState, args: A) => string;
  /** What it touches, brought into view by undo. */
  readonly subject?: (args: A) => string | null;
  /** Why it cannot be done with these arguments; the dispatcher then tells it and changes nothing. Empty: it can. */
  readonly refusal?: (state: AppState, args: A) => readonly Problem[];
  /** `before` is what the draft was made of. */
  readonly run: (draft: Draft<DocumentState>, args: A, before: DocumentState) => void;
}

/** Changes the sitting or a preference: never an undo step, never ends what could be redone. */
export interface ViewCommand<A> extends CommandBase {
  readonly kind: 'view';
  readonly undo: 'none';
  readonly run: (state: AppState, args: A) => Partial<SessionState & PreferenceState>;
}

/** What the picture can be asked to do; there is none before it has been drawn. */
export interface CanvasControl {
  readonly zoomBy: (factor: number) => void;
  readonly fit: () => void;
  /** Begins to enter displays one after another along the chain; only where displays are drawn. */
  readonly walkDisplays?: () => void;
}

/** What the keys and menus of Draw do with what is chosen there. */
export interface DrawActions {
  readonly insert: (kind: UnitKind) => void;
  readonly remove: () => void;
  /** What was copied, as a text for the clipboard; null when nothing could be. */
  readonly copy: () => string | null;
  readonly cut: () => string | null;
  readonly paste: (text: string) => void;
  /** Pastes from the clipboard of the system, or what was copied last in this window. */
  readonly pasteLast: () => Promise<void>;
  readonly duplicate: () => void;
  readonly addChain: () => void;
  readonly addCable: () => void;
  /** The focus goes to the fields of what is chosen. */
  readonly goToInspector: () => void;
  readonly takeOff: () => void;
  readonly move: (key: 'left' | 'right' | 'up' | 'down') => void;
}

/** What an effect may use. */
export interface EffectContext {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly canvas: CanvasControl | null;
  readonly files: FileActions;
  /** Left out where nothing is drawn. */
  readonly draw?: DrawActions;
}

/** Works through something other than the state: the history, the picture, a file. */
export interface EffectCommand<A> extends CommandBase {
  readonly kind: 'effect';
  readonly undo: 'none';
  readonly run: (context: EffectContext, args: A) => void | Promise<void>;
}

export type Command<A> = DocumentCommand<A> | ViewCommand<A> | EffectCommand<A>;

export const documentCommand = <A>(command: Omit<DocumentCommand<A>, 'kind'>): DocumentCommand<A> => ({ kind: 'document', ...command });

export const viewCommand = <A = undefined>(command: Omit<ViewCommand<A>, 'kind' | 'undo'>): ViewCommand<A> => ({
  kind: 'view',
  undo: 'none',
  ...command,
});

export const effectCommand = <A = undefined>(command: Omit<EffectCommand<A>, 'kind' | 'undo'>): EffectCommand<A> => ({
  kind: 'effect',
  undo: 'none',
  ...command,
});
