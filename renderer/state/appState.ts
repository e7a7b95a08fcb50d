import type { Problem } from '../../engine/base/index.ts';
import type { CheckedCabinet } from '../../engine/cabinet/index.ts';
import type { Diagnosis } from '../../engine/diagnosis/index.ts';
import type { HelpTopic } from '../../engine/messages/index.ts';
import type { Plan } from '../../engine/plan/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import type { Look } from '../../engine/simulation/index.ts';
import type { ComparedWith } from '../compare/comparedWith.ts';
import type { ConfirmedState } from '../confirmed/confirmedState.ts';
import type { DrawState, Workspace } from '../draw/drawState.ts';
import type { HandBackState } from '../handback/handBackState.ts';
import type { InjectState } from '../inject/injectState.ts';
import type { EquipmentState } from '../legend/equipmentState.ts';
import type { Library } from '../legend/library.ts';
import type { ChosenColumns } from '../lists/listColumns.ts';
import type { PapersState } from '../papers/papersState.ts';
import type { PracticeScreen } from '../practice/practiceScreens.ts';
import type { SumsState } from '../sums/sumsState.ts';
import type { UndoHistory } from './history.ts';
import type { Alert, CaseRecord, KeptCopy, OpenFiles, Question, RecentEntry, SavedContent } from './sitting.ts';

export type { CaseRecord } from './sitting.ts';

export const themeChoices = ['system', 'light', 'dark', 'high-contrast'] as const;
export type ThemeChoice = (typeof themeChoices)[number];

/** How one walks along the displays. */
export type WalkOrder = 'chain' | 'mounting';

/** Which candidate is laid over the cabinet: always the best one, none, or the one with this key. */
export type ChosenCandidate = { readonly by: 'rank' } | { readonly by: 'nobody' } | { readonly by: 'user'; readonly key: string };

/**
 * What is being entered in the pop-up. `walking`: each entry goes on to the next unit, after the last one to the reports, and in the
 * end to whether the control is halted.
 */
export type OpenEntry =
  | { readonly kind: 'display'; readonly unit: string; readonly walking: boolean }
  /** `passed`: chains whose report was not entered on this walk, and is not asked for again. */
  | { readonly kind: 'report'; readonly chain: string; readonly walking: boolean; readonly passed?: readonly string[] }
  | { readonly kind: 'halted'; readonly walking: boolean }
  /** A look at neither display nor report: light, 24 V, a comparison. It stands alone, never in a walk. */
  | { readonly kind: 'check'; readonly look: Look; readonly walking: false };

/** Where the document came from. */
export interface DocumentSource {
  readonly kind: 'sample' | 'file' | 'new' | 'copy' | 'restored';
  readonly name: string;
}

/** Something the program must tell in a dialog: what went wrong when a file was opened or saved, or when the program started. */
export interface RefusedFile {
  readonly deed: 'open' | 'kept' | 'restore' | 'start' | 'export' | 'delete';
  /** Name of the file, where the problems themselves do not say it. */
  readonly name?: string;
  readonly problems: readonly Problem[];
  /** A copy of the file that was kept before its last save. */
  readonly kept?: KeptCopy;
}

/** A sentence for the live region; the number makes the same sentence twice two announcements. */
export interface Announcement {
  readonly text: string;
  readonly number: number;
}

/** What the diagnosis said, and of what. */
export interface Answer extends DocumentState {
  readonly diagnosis: Diagnosis;
}

/** How the diagnosis of the present document stands; `last` is the answer to an older state of it. */
export type DiagnosisStatus =
  | { readonly state: 'idle' }
  /** `late`: it takes so long that the last answer must be marked as an old one. */
  | { readonly state: 'working'; readonly revision: number; readonly last: Answer | null; readonly share: number; readonly late: boolean }
  | { readonly state: 'answered'; readonly revision: number; readonly answer: Answer; readonly milliseconds: number }
  | { readonly state: 'cancelled'; readonly revision: number; readonly last: Answer | null }
  | { readonly state: 'failed'; readonly revision: number; readonly detail: string };

/** What to do next, for one revision of the document. */
export interface PlanAnswer {
  readonly revision: number;
  readonly plan: Plan;
  /** How much of the planning is done, 0 to 1. */
  readonly share: number;
  /** `working`: better plans may follow; `stopped`: the user stopped it. */
  readonly state: 'working' | 'settled' | 'stopped';
}

/** Saved with the file, and undoable. */
export interface DocumentState {
  readonly cabinet: CabinetContent;
  readonly caseRecord: CaseRecord;
}

/** Of this sitting: neither saved with the file nor undone. */
export interface SessionState {
  readonly source: DocumentSource;
  /** The files behind the document. */
  readonly files: OpenFiles;
  /** What lies on the disk; the document is unsaved where it differs. */
  readonly saved: SavedContent;
  /** What must be told of the files, until it is solved or put away. */
  readonly alerts: readonly Alert[];
  /** What the user must answer first. */
  readonly question: Question | null;
  readonly recent: readonly RecentEntry[];
  readonly history: UndoHistory;
  readonly chosen: ChosenCandidate;
  readonly entry: OpenEntry | null;
  /** The unit that undo, redo or a choice brings into view. */
  readonly spotlight: { readonly subject: string; readonly number: number } | null;
  readonly refused: RefusedFile | null;
  /** Why the last thing that was asked of the cabinet was not done; told beside it until something else is done. */
  readonly refusal: { readonly problems: readonly Problem[]; readonly number: number } | null;
  /** The cabinet with which the one in the window is compared. */
  readonly comparison: ComparedWith | null;
  /** How a new machine is called is being asked. */
  readonly machineAsked: boolean;
  /** What the help shows; null: it is closed. */
  readonly help: HelpTopic | null;
  readonly aboutShown: boolean;
  readonly announcement: Announcement;
  /** How many suspects the grid lists beyond the usual few. */
  readonly allCandidates: boolean;
  /** What is open of the equipment types. */
  readonly equipment: EquipmentState;
  /** Key of the step that was asked for: its card is shown and takes the focus, its place is lit. Null: the best one, unlit. */
  readonly chosenStep: { readonly key: string; readonly number: number } | null;
  /** What is being tried out on the picture; nothing of it was seen. */
  readonly inject: InjectState;
  /** The page of sums, and the figures that are tried on it. */
  readonly sums: SumsState;
  /** The machine is being handed back. */
  readonly handBack: HandBackState;
  /** The user's own collection of confirmed cases. It stays when another document is opened. */
  readonly confirmed: ConfirmedState;
  /** The repair table is open. */
  readonly repairTableShown: boolean;
  /** The fault rates are open. */
  readonly ratesShown: boolean;
  /** What is open of documents and imports. */
  readonly papers: PapersState;
  /** Which workspace is shown. It stays when another document is opened. */
  readonly workspace: Workspace;
  /** Which screen of Practice is shown. */
  readonly practice: PracticeScreen;
  /** Whether Practice is shown in large type, for a class before one screen. */
  readonly practiceLarge: boolean;
  /** Counts how often the list of exercises was asked for from within an exercise. */
  readonly practiceListAsked: number;
  /** What is chosen in Draw, and how it is looked at. */
  readonly draw: DrawState;
}

/** The user's own, kept from sitting to sitting. */
export interface PreferenceState {
  readonly theme: ThemeChoice;
  /** Long chains are folded into several rows instead of one. */
  readonly foldChains: boolean;
  readonly reduceMotion: boolean;
  /** Types and legends of the user's own. */
  readonly library: Library;
  readonly walkOrder: WalkOrder;
  /** New cases begin with rates that confirmed cases sharpened. */
  readonly takeConfirmed: boolean;
  /** How many confirmed cases of its own kind each assumed rate is worth. */
  readonly confirmedStrength: number;
  /** Columns of the lists, where they are not the usual ones. */
  readonly listColumns: ChosenColumns;
}

/** Worked out from the document; never stored. */
export interface DerivedState {
  /** Grows with every change of the document; an answer for an older one is dropped. */
  readonly revision: number;
  readonly checked: CheckedCabinet;
  readonly diagnosis: DiagnosisStatus;
  /** Null before the first answer; it may belong to an older revision while the next is worked out. */
  readonly planned: PlanAnswer | null;
}

export interface AppState extends DocumentState, SessionState, PreferenceState, DerivedState {}

export type StateKind = 'document' | 'session' | 'preference' | 'derived';

type KindOf<K extends keyof AppState> = K extends keyof DocumentState
  ? 'document'
  : K extends keyof SessionState
    ? 'session'
    : K extends keyof PreferenceState
      ? 'preference'
      : 'derived';

/** What each state key is. A new key does not compile without its row, and its row must say the same as the interface it stands in. */
export const stateTable: { readonly [K in keyof Required<AppState>]: KindOf<K> } = {
  cabinet: 'document',
  caseRecord: 'document',
  source: 'session',
  files: 'session',
  saved: 'session',
  alerts: 'session',
  question: 'session',
  recent: 'session',
  history: 'session',
  chosen: 'session',
  entry: 'session',
  spotlight: 'session',
  refused: 'session',
  refusal: 'session',
  comparison: 'session',
  machineAsked: 'session',
  help: 'session',
  aboutShown: 'session',
  announcement: 'session',
  allCandidates: 'session',
  equipment: 'session',
  chosenStep: 'session',
  inject: 'session',
  sums: 'session',
  handBack: 'session',
  confirmed: 'session',
  repairTableShown: 'session',
  ratesShown: 'session',
  papers: 'session',
  workspace: 'session',
  practice: 'session',
  practiceLarge: 'session',
  practiceListAsked: 'session',
  draw: 'session',
  theme: 'preference',
  foldChains: 'preference',
  reduceMotion: 'preference',
  library: 'preference',
  walkOrder: 'preference',
  takeConfirmed: 'preference',
  confirmedStrength: 'preference',
  listColumns: 'preference',
  revision: 'derived',
  checked: 'derived',
  diagnosis: 'derived',
  planned: 'derived',
};

/** The keys of one kind, in the order of the table. */
export function keysOfKind(kind: StateKind): readonly (keyof AppState)[] {
  // Object.keys is typed as string[]; the table's keys are exactly those of AppState.
  return (Object.keys(stateTable) as (keyof AppState)[]).filter((key) => stateTable[key] === kind);
}
