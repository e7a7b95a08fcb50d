import { Check, ChevronRight, Contrast, Redo2, Undo2 } from 'lucide-react';
import { Fragment, useState } from 'react';
import { Button, Header, Menu, MenuItem, MenuSection, MenuTrigger, Popover, Separator, SubmenuTrigger } from 'react-aria-components';
import { fileWords, windowTexts } from '../../engine/messages/index.ts';
import { FileMenuItems } from '../files/FileMenu.tsx';
import { isUnsaved } from '../files/unsaved.ts';
import { HouseSign } from '../marks/Sign.tsx';
import { listSamples, loadCaseTitles, type SampleCabinet } from '../samples/sampleCabinets.ts';
import { type AppState, themeChoices } from '../state/appState.ts';
import { type CommandId, commands } from '../state/commands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { type MenuCommand, type MenuName, menuSections } from './plainCommands.ts';
import { shortcutsOf, wordKeys } from './shortcuts.ts';
import { WorkspaceSwitch } from './WorkspaceSwitch.tsx';
import './menu.css';

/** The bar at the top: menus, what is open, undo and redo, colours. */
export function MenuBar() {
  return (
    <div className="menu-bar">
      <span className="brand">
        <HouseSign />
        {windowTexts.productName}
      </span>
      <nav className="menus" aria-label={windowTexts.menus.all}>
        <FileMenu />
        <PlainMenu menu="edit" />
        <PlainMenu menu="cabinet" />
        <ViewMenu />
        <PlainMenu menu="practice" />
        <SamplesMenu />
        <PlainMenu menu="help" />
      </nav>
      <WorkspaceSwitch />
      <OpenDocument />
      <Tools />
    </div>
  );
}

function TopMenu({
  label,
  children,
  onOpenChange,
}: {
  readonly label: string;
  readonly children: React.ReactNode;
  readonly onOpenChange?: (open: boolean) => void;
}) {
  return (
    <MenuTrigger {...(onOpenChange ? { onOpenChange } : {})}>
      <Button className="menu-button">{label}</Button>
      <Popover className="menu-popover" placement="bottom start" offset={2}>
        {children}
      </Popover>
    </MenuTrigger>
  );
}

function Item({ id }: { readonly id: MenuCommand }) {
  const dispatch = useDispatch();
  const enabled = useApp((state) => commands[id].isEnabled(state));
  const checked = useApp((state) => checks[id]?.(state) ?? false);
  // The step that is undone or redone stands beside the word.
  const step = useApp(
    ({ history: { past, future } }) => (enabled ? (id === 'undo' ? past[past.length - 1]?.name : future[0]?.name) : null) ?? null,
  );
  const [keys] = shortcutsOf(id);
  const text =
    id === 'undo' ? windowTexts.undoStep(step) : id === 'redo' ? windowTexts.redoStep(step) : windowTexts.commands[commands[id].label];
  return (
    <MenuItem className="menu-item" isDisabled={!enabled} textValue={text} onAction={() => dispatch(id)}>
      <span className="menu-check">{checked && <Check size={14} aria-hidden="true" />}</span>
      <span className="menu-text">{text}</span>
      {keys !== undefined && <kbd>{wordKeys(keys)}</kbd>}
    </MenuItem>
  );
}

/** Lines that are set or not: what says which. */
const checks: { readonly [K in MenuCommand]?: (state: AppState) => boolean } = {
  'toggle-walk-order': ({ walkOrder }) => walkOrder === 'mounting',
  'toggle-inject': ({ inject }) => inject.on,
  'go-draw': ({ workspace }) => workspace === 'draw',
  'go-find': ({ workspace }) => workspace === 'find',
  'go-practice': ({ workspace }) => workspace === 'practice',
  'toggle-arrangement': ({ draw }) => draw.arrangement === 'mounting',
  'toggle-feedback': ({ draw }) => draw.feedbackShown,
  'toggle-fold-chains': ({ foldChains }) => foldChains,
  'toggle-reduce-motion': ({ reduceMotion }) => reduceMotion,
};

/** The lines of a menu, with a rule between its sections. */
function useSections(menu: MenuName) {
  const workspace = useApp((state) => state.workspace);
  return menuSections(menu, workspace);
}

function Sections({ menu }: { readonly menu: MenuName }) {
  return useSections(menu).map((section, index) => (
    <Fragment key={section[0]}>
      {index > 0 && <Separator className="menu-line" />}
      <MenuSection>
        {section.map((id) => (
          <Item key={id} id={id} />
        ))}
      </MenuSection>
    </Fragment>
  ));
}

function PlainMenu({ menu, children }: { readonly menu: MenuName; readonly children?: React.ReactNode }) {
  return (
    <TopMenu label={windowTexts.menus[menu]}>
      <Menu aria-label={windowTexts.menus[menu]} className="menu">
        <Sections menu={menu} />
        {children}
      </Menu>
    </TopMenu>
  );
}

function FileMenu() {
  const dispatch = useDispatch();
  const sections = useSections('file');
  return (
    <TopMenu label={windowTexts.menus.file} onOpenChange={(open) => open && dispatch('list-recent')}>
      <FileMenuItems sections={sections} item={(id) => <Item id={id} />} />
    </TopMenu>
  );
}

function ViewMenu() {
  const dispatch = useDispatch();
  const theme = useApp((state) => state.theme);
  return (
    <PlainMenu menu="view">
      <Separator className="menu-line" />
      <MenuSection
        selectionMode="single"
        selectedKeys={[theme]}
        onSelectionChange={(keys) => {
          const chosen = themeChoices.find((choice) => keys !== 'all' && keys.has(choice));
          if (chosen) dispatch('set-theme', { theme: chosen });
        }}
      >
        <Header className="menu-head">{windowTexts.themeButton}</Header>
        {themeChoices.map((choice) => (
          <MenuItem key={choice} id={choice} className="menu-item" textValue={windowTexts.themes[choice]}>
            <span className="menu-check">{choice === theme && <Check size={14} aria-hidden="true" />}</span>
            <span className="menu-text">{windowTexts.themes[choice]}</span>
          </MenuItem>
        ))}
      </MenuSection>
    </PlainMenu>
  );
}

function SamplesMenu() {
  const [titles, setTitles] = useState<ReadonlyMap<string, string>>(new Map());
  // The titles stand in the files, which are only fetched once somebody wants to choose.
  const loadTitles = (open: boolean) => {
    if (open && titles.size === 0) void loadCaseTitles().then(setTitles);
  };
  return (
    <TopMenu label={windowTexts.menus.samples} onOpenChange={loadTitles}>
      <Menu aria-label={windowTexts.menus.samples} className="menu samples">
        {listSamples().map((sample) => (
          <SubmenuTrigger key={sample.name}>
            <MenuItem className="menu-item" textValue={windowTexts.sampleName(sample.name)}>
              <span className="menu-check" />
              <span className="menu-text">{windowTexts.sampleName(sample.name)}</span>
              <ChevronRight size={14} aria-hidden="true" />
            </MenuItem>
            <Popover className="menu-popover" offset={-2}>
              <SampleCases sample={sample} titles={titles} />
            </Popover>
          </SubmenuTrigger>
        ))}
      </Menu>
    </TopMenu>
  );
}

function SampleCases({ sample, titles }: { readonly sample: SampleCabinet; readonly titles: ReadonlyMap<string, string> }) {
  const dispatch = useDispatch();
  const open = useApp((state) => (state.source.kind === 'sample' ? state.source.name : null));
  const entries = [
    ...sample.caseFiles.map((file, index) => ({ file, words: titles.get(file) ?? windowTexts.sampleCase(index + 1) })),
    { file: sample.cabinetFile, words: windowTexts.samplesWithoutCase },
  ];
  return (
    <Menu aria-label={windowTexts.sampleName(sample.name)} className="menu">
      {entries.map(({ file, words }) => (
        <MenuItem key={file} className="menu-item" textValue={words} onAction={() => dispatch('open-sample', { name: file })}>
          <span className="menu-check">{file === open && <Check size={14} aria-hidden="true" />}</span>
          <span className="menu-text">{words}</span>
        </MenuItem>
      ))}
    </Menu>
  );
}

function OpenDocument() {
  const name = useApp((state) => state.cabinet.name);
  const caseName = useApp((state) => state.caseRecord.name);
  const kind = useApp((state) => state.source.kind);
  const file = useApp((state) => state.files.case?.name ?? state.files.cabinet?.name ?? fileWords.source[kind]);
  const unsaved = useApp(isUnsaved);
  return (
    <p className="open-document">
      <b>{name}</b>
      <span>
        {unsaved && <span className="unsaved-mark">● {fileWords.unsaved} · </span>}
        {caseName} · {file}
      </span>
    </p>
  );
}

function Tools() {
  const dispatch = useDispatch();
  const undo = useApp((state) =>
    commands.undo.isEnabled(state) ? (state.history.past[state.history.past.length - 1]?.name ?? null) : null,
  );
  const redo = useApp((state) => (commands.redo.isEnabled(state) ? (state.history.future[0]?.name ?? null) : null));
  const theme = useApp((state) => state.theme);
  const next = themeChoices[(themeChoices.indexOf(theme) + 1) % themeChoices.length] ?? 'system';
  const tool = (id: Extract<CommandId, 'undo' | 'redo'>, label: string, enabled: boolean, icon: React.ReactNode) => (
    <button type="button" className="icon-button" disabled={!enabled} aria-label={label} title={label} onClick={() => dispatch(id)}>
      {icon}
    </button>
  );
  const themeLabel = windowTexts.themeNow(windowTexts.themes[theme]);
  return (
    <div className="tools">
      {tool('undo', windowTexts.undoStep(undo), undo !== null, <Undo2 size={18} aria-hidden="true" />)}
      {tool('redo', windowTexts.redoStep(redo), redo !== null, <Redo2 size={18} aria-hidden="true" />)}
      <button
        type="button"
        className="icon-button"
        aria-label={themeLabel}
        title={themeLabel}
        onClick={() => dispatch('set-theme', { theme: next })}
      >
        <Contrast size={18} aria-hidden="true" />
      </button>
    </div>
  );
}
