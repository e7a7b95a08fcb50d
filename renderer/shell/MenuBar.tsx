import { Check, ChevronRight, Contrast, Redo2, Undo2 } from 'lucide-react';
import { useState } from 'react';
import { Button, Header, Menu, MenuItem, MenuSection, MenuTrigger, Popover, Separator, SubmenuTrigger } from 'react-aria-components';
import { fileWords, windowTexts } from '../../engine/messages/index.ts';
import { FileMenuItems } from '../files/FileMenu.tsx';
import { isUnsaved } from '../files/unsaved.ts';
import { HouseSign } from '../marks/Sign.tsx';
import { listSamples, loadCaseTitles, type SampleCabinet } from '../samples/sampleCabinets.ts';
import { themeChoices } from '../state/appState.ts';
import { type CommandId, commands } from '../state/commands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { buildItems, chooseItems, editItems, moveItems, type PlainCommand, practiceItems } from './plainCommands.ts';
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
        <EditMenu />
        <CabinetMenu />
        <ViewMenu />
        <PracticeMenu />
        <SamplesMenu />
        <HelpMenu />
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

function Item({ id, label, checked }: { readonly id: PlainCommand; readonly label?: string; readonly checked?: boolean }) {
  const dispatch = useDispatch();
  const enabled = useApp((state) => commands[id].isEnabled(state));
  const [keys] = shortcutsOf(id);
  const text = label ?? windowTexts.commands[commands[id].label];
  return (
    <MenuItem className="menu-item" isDisabled={!enabled} textValue={text} onAction={() => dispatch(id)}>
      <span className="menu-check">{checked && <Check size={14} aria-hidden="true" />}</span>
      <span className="menu-text">{text}</span>
      {keys !== undefined && <kbd>{wordKeys(keys)}</kbd>}
    </MenuItem>
  );
}

const Items = ({ ids }: { readonly ids: readonly PlainCommand[] }) => ids.map((id) => <Item key={id} id={id} />);

function FileMenu() {
  const dispatch = useDispatch();
  return (
    <TopMenu label={windowTexts.menus.file} onOpenChange={(open) => open && dispatch('list-recent')}>
      <FileMenuItems item={(id) => <Item id={id} />} />
    </TopMenu>
  );
}

function EditMenu() {
  const undo = useApp((state) => state.history.past[state.history.past.length - 1]?.name ?? null);
  const redo = useApp((state) => state.history.future[0]?.name ?? null);
  const injecting = useApp((state) => state.inject.on);
  const mounting = useApp((state) => state.walkOrder === 'mounting');
  const drawing = useApp((state) => state.workspace === 'draw');
  return (
    <TopMenu label={windowTexts.menus.edit}>
      <Menu aria-label={windowTexts.menus.edit} className="menu">
        <Item id="undo" label={windowTexts.undoStep(undo)} />
        <Item id="redo" label={windowTexts.redoStep(redo)} />
        <Separator className="menu-line" />
        {drawing ? (
          <>
            <Items ids={editItems} />
            <Item id="paste-rows" />
            <Separator className="menu-line" />
            <Items ids={chooseItems} />
            <Separator className="menu-line" />
            <Item id="find-thing" />
            <Item id="palette" />
          </>
        ) : (
          <>
            <Item id="walk-displays" />
            <Item id="enter-next-report" />
            <Item id="toggle-walk-order" checked={mounting} />
            <Item id="enter-restart" />
            <Separator className="menu-line" />
            <Item id="toggle-inject" checked={injecting} />
            <Item id="ask-take-pattern" />
            <Separator className="menu-line" />
            <Item id="hand-back" />
          </>
        )}
      </Menu>
    </TopMenu>
  );
}

function CabinetMenu() {
  const drawing = useApp((state) => state.workspace === 'draw');
  return (
    <TopMenu label={windowTexts.menus.cabinet}>
      <Menu aria-label={windowTexts.menus.cabinet} className="menu">
        {drawing && (
          <>
            <Items ids={buildItems} />
            <Separator className="menu-line" />
            <Items ids={moveItems} />
            <Separator className="menu-line" />
          </>
        )}
        <Item id="equipment-types" />
        <Item id="toggle-sums" />
        <Item id="repair-table" />
        <Separator className="menu-line" />
        <Item id="compare-saved" />
        <Item id="compare-file" />
        <Item id="ask-new-machine" />
      </Menu>
    </TopMenu>
  );
}

function ViewMenu() {
  const dispatch = useDispatch();
  const theme = useApp((state) => state.theme);
  const fold = useApp((state) => state.foldChains);
  const reduce = useApp((state) => state.reduceMotion);
  const workspace = useApp((state) => state.workspace);
  const drawing = workspace === 'draw';
  const draw = useApp((state) => state.draw);
  return (
    <TopMenu label={windowTexts.menus.view}>
      <Menu aria-label={windowTexts.menus.view} className="menu">
        <MenuSection>
          <Item id="go-draw" checked={drawing} />
          <Item id="go-find" checked={workspace === 'find'} />
          <Item id="go-practice" checked={workspace === 'practice'} />
        </MenuSection>
        <Separator className="menu-line" />
        {drawing && (
          <>
            <MenuSection>
              <Item id="toggle-draw-view" />
              <Item id="toggle-arrangement" checked={draw.arrangement === 'mounting'} />
              <Item id="toggle-feedback" checked={draw.feedbackShown} />
            </MenuSection>
            <Separator className="menu-line" />
          </>
        )}
        <MenuSection>
          <Item id="zoom-in" />
          <Item id="zoom-out" />
          <Item id="zoom-to-fit" />
        </MenuSection>
        <Separator className="menu-line" />
        <MenuSection>
          <Item id="toggle-fold-chains" checked={fold} />
          <Item id="toggle-reduce-motion" checked={reduce} />
        </MenuSection>
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
      </Menu>
    </TopMenu>
  );
}

function PracticeMenu() {
  return (
    <TopMenu label={windowTexts.menus.practice}>
      <Menu aria-label={windowTexts.menus.practice} className="menu">
        <Items ids={practiceItems.slice(0, 3)} />
        <Separator className="menu-line" />
        <Items ids={practiceItems.slice(3)} />
      </Menu>
    </TopMenu>
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

function HelpMenu() {
  const dispatch = useDispatch();
  return (
    <TopMenu label={windowTexts.menus.help}>
      <Menu aria-label={windowTexts.menus.help} className="menu">
        <MenuItem
          className="menu-item"
          textValue={windowTexts.commands.showShortcuts}
          onAction={() => dispatch('show-shortcuts', { shown: true })}
        >
          <span className="menu-check" />
          <span className="menu-text">{windowTexts.commands.showShortcuts}</span>
        </MenuItem>
      </Menu>
    </TopMenu>
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
  const undo = useApp((state) => state.history.past[state.history.past.length - 1]?.name ?? null);
  const redo = useApp((state) => state.history.future[0]?.name ?? null);
  // While a fault is simulated neither runs.
  const injecting = useApp((state) => state.inject.on);
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
      {tool('undo', windowTexts.undoStep(undo), undo !== null && !injecting, <Undo2 size={18} aria-hidden="true" />)}
      {tool('redo', windowTexts.redoStep(redo), redo !== null && !injecting, <Redo2 size={18} aria-hidden="true" />)}
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
