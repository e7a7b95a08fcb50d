import { ChevronRight } from 'lucide-react';
import { Fragment } from 'react';
import { Menu, MenuItem, MenuSection, Popover, Separator, SubmenuTrigger } from 'react-aria-components';
import { fileWords, windowTexts } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { hasPickers } from './browserHandles.ts';
import { findDesktop } from './desktopBridge.ts';
import { wordTime } from './wordTime.ts';
import './files.css';

/** The menu of the files; `item` draws a command as every menu draws it. */
export function FileMenuItems<Id extends string>({
  sections,
  item,
}: {
  readonly sections: readonly (readonly Id[])[];
  readonly item: (id: Id) => React.ReactNode;
}) {
  const limits = findDesktop() ? null : hasPickers() ? fileWords.limits.browser : fileWords.limits.download;
  return (
    <Menu aria-label={windowTexts.menus.file} className="menu file-menu">
      {sections.flatMap((section, index) => [
        index > 0 && <Separator key={`line ${section[0]}`} className="menu-line" />,
        <MenuSection key={section[0]}>
          {section.flatMap((id) => [<Fragment key={id}>{item(id)}</Fragment>, id === 'open-file' && <RecentFiles key="recent" />])}
        </MenuSection>,
      ])}
      {limits !== null && <Separator className="menu-line" />}
      {limits !== null && (
        <MenuItem isDisabled className="menu-item menu-note" textValue={limits}>
          <span className="menu-check" />
          <span className="menu-text">{limits}</span>
        </MenuItem>
      )}
    </Menu>
  );
}

function RecentFiles() {
  const recent = useApp((state) => state.recent);
  const dispatch = useDispatch();
  return (
    <SubmenuTrigger>
      <MenuItem className="menu-item" textValue={fileWords.recent}>
        <span className="menu-check" />
        <span className="menu-text">{fileWords.recent}</span>
        <ChevronRight size={14} aria-hidden="true" />
      </MenuItem>
      <Popover className="menu-popover" offset={0}>
        <Menu aria-label={fileWords.recent} className="menu">
          {recent.map(({ key, name, openedAt, missing }) => (
            <MenuItem
              key={key}
              className={missing ? 'menu-item recent missing' : 'menu-item recent'}
              textValue={missing ? `${name}, ${fileWords.recentMissing}` : name}
              onAction={() => dispatch('open-recent', { key })}
            >
              <span className="menu-check" />
              <span className="menu-text">{name}</span>
              <small>{missing ? fileWords.recentMissing : wordTime(openedAt)}</small>
            </MenuItem>
          ))}
          {recent.length === 0 && (
            <MenuItem isDisabled className="menu-item" textValue={fileWords.recentNone}>
              <span className="menu-check" />
              <span className="menu-text">{fileWords.recentNone}</span>
            </MenuItem>
          )}
        </Menu>
      </Popover>
    </SubmenuTrigger>
  );
}
