import { Camera } from 'lucide-react';
import { useRef, useState } from 'react';
import type { FieldOwner, PictureField } from '../../engine/edit/index.ts';
import { editWords, entryWords, wordField } from '../../engine/messages/index.ts';
import { hasRoom, type PhotoTrouble, shrinkPhoto } from '../find/entryPhoto.ts';
import { Photo } from '../find/Photo.tsx';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { ownerName } from './editCommands.ts';

const words = editWords.inspector.pictures;

/** The pictures that stand with one thing: looked at, added and taken out. Each is made as small as those of displays. */
export function PicturesField({
  owners,
  path,
  value,
}: {
  readonly owners: readonly FieldOwner[];
  readonly path: string;
  readonly value: unknown;
}) {
  const { store, dispatch } = useWindow();
  const photos = useApp((state) => state.cabinet.photos);
  const [trouble, setTrouble] = useState<PhotoTrouble | 'working' | null>(null);
  const file = useRef<HTMLInputElement>(null);
  const ids: readonly string[] = Array.isArray(value) ? value : [];
  const [of] = owners;
  // One picture shows one thing: of several none is added.
  if (of === undefined || owners.length > 1) return null;
  const field: PictureField = path === 'cabinetPhotos' ? 'cabinetPhotos' : 'photos';
  const take = async (picked: File) => {
    setTrouble('working');
    const shrunk = await shrinkPhoto(picked);
    if (!shrunk.ok) return setTrouble(shrunk.trouble);
    const state = store.getState();
    if (!hasRoom(state.cabinet, shrunk.data)) return setTrouble('case-full');
    const takenOn = new Date(picked.lastModified).toISOString().slice(0, 10);
    dispatch('add-picture', {
      of,
      field,
      picture: { caption: ownerName(state, of), takenOn, mediaType: 'image/jpeg', data: shrunk.data },
    });
    setTrouble(null);
  };
  return (
    <fieldset className="rows-field">
      <legend>{wordField(path).label}</legend>
      {ids.length > 0 && (
        <ul className="field-pictures">
          {ids.map((id, index) => {
            const photo = photos?.find((one) => one.id === id);
            const caption = photo?.caption ?? words.picture(index + 1);
            return (
              <li key={id}>
                {photo !== undefined && (
                  <Photo
                    data={photo.data}
                    mediaType={photo.mediaType}
                    name={caption}
                    remove={words.remove(caption)}
                    onRemove={() =>
                      dispatch('remove-picture', { of, field, photo: id, keep: isNamedByCase(store.getState().caseRecord, id) })
                    }
                  />
                )}
              </li>
            );
          })}
        </ul>
      )}
      <input
        ref={file}
        type="file"
        accept="image/*"
        hidden
        aria-label={words.file}
        onChange={(event) => {
          const [picked] = event.target.files ?? [];
          event.target.value = '';
          if (picked) void take(picked);
        }}
      />
      <button type="button" className="button small" disabled={trouble === 'working'} onClick={() => file.current?.click()}>
        <Camera size={14} aria-hidden="true" /> {words.add}
      </button>
      {trouble !== null && (
        <span className={trouble === 'working' ? 'field-hint shown' : 'field-trouble'} role="alert">
          {trouble === 'working' ? entryWords.notes.working : entryWords.notes.failed[trouble]}
        </span>
      )}
    </fieldset>
  );
}

/** Whether what was seen names a photo: then it stays with the cabinet. */
function isNamedByCase({ evidence }: { readonly evidence: { readonly snapshots: readonly object[] } }, photo: string): boolean {
  return JSON.stringify(evidence.snapshots).includes(`"photo":${JSON.stringify(photo)}`);
}
