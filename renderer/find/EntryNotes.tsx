import { Camera } from 'lucide-react';
import { useRef, useState } from 'react';
import { isUnread } from '../../engine/diagnosis/index.ts';
import { entryWords } from '../../engine/messages/index.ts';
import type { Seen } from '../quick/entryCommands.ts';
import { currentSnapshot, findDisplay, findReport } from '../state/evidence.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { hasRoom, type PhotoTrouble, shrinkPhoto } from './entryPhoto.ts';
import { Photo } from './Photo.tsx';

const words = entryWords.notes;

/** A note and a photo of what is seen. A display that nobody has read yet is then kept as "not read yet". */
export function EntryNotes({ seen, name }: { readonly seen: Seen; readonly name: string }) {
  const { store, dispatch } = useWindow();
  const observation = useApp((state) => {
    const snapshot = currentSnapshot(state.caseRecord);
    return seen.kind === 'display' ? findDisplay(snapshot, seen.unit) : findReport(snapshot, seen.chain);
  });
  const photo = useApp((state) => state.cabinet.photos?.find(({ id }) => id === observation?.photo));
  const [trouble, setTrouble] = useState<PhotoTrouble | 'working' | null>(null);
  const file = useRef<HTMLInputElement>(null);
  const locked = seen.kind === 'report' && observation === undefined;
  const unread = observation !== undefined && 'meanings' in observation && isUnread(observation.meanings);

  const take = async (picked: File) => {
    setTrouble('working');
    const shrunk = await shrinkPhoto(picked);
    if (!shrunk.ok) return setTrouble(shrunk.trouble);
    if (!hasRoom(store.getState().cabinet, shrunk.data)) return setTrouble('case-full');
    const now = new Date().toISOString();
    dispatch('add-photo', { seen, data: shrunk.data, takenOn: now.slice(0, 10), at: now });
    dispatch('announce', { text: words.added });
    setTrouble(null);
  };
  return (
    <div className={`entry-notes${photo ? ' with-photo' : ''}`}>
      <label className="note-field">
        {words.note}{' '}
        <input
          value={observation?.note ?? ''}
          maxLength={2000}
          autoComplete="off"
          disabled={locked}
          placeholder={locked ? words.reportFirst : ''}
          onChange={(event) => dispatch('note-seen', { seen, note: event.target.value, at: new Date().toISOString() })}
        />
      </label>
      <input
        ref={file}
        type="file"
        accept="image/*"
        hidden
        onChange={(event) => {
          const [picked] = event.target.files ?? [];
          event.target.value = '';
          if (picked) void take(picked);
        }}
      />
      <button type="button" className="button small" disabled={locked || trouble === 'working'} onClick={() => file.current?.click()}>
        <Camera size={16} aria-hidden="true" />
        {photo ? words.another : words.photo}
      </button>
      {photo && (
        <Photo
          key={photo.id}
          data={photo.data}
          mediaType={photo.mediaType}
          name={words.photoOf(name)}
          remove={words.remove}
          onRemove={() => {
            dispatch('remove-photo', { seen });
            dispatch('announce', { text: words.removed });
          }}
        />
      )}
      {unread && <p className="entry-hint quiet-text">{words.unreadHint}</p>}
      {trouble !== null && (
        <p className="entry-hint photo-said" role="alert">
          {trouble === 'working' ? words.working : words.failed[trouble]}
        </p>
      )}
    </div>
  );
}
