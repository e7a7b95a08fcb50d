import { X } from 'lucide-react';
import type { FieldOwner } from '../../engine/edit/index.ts';
import { editWords, wordField } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';
import { useSetField } from './useSetField.ts';

/** The pictures that stand with a thing. They are taken where displays are entered; here they are looked at and taken out. */
export function PicturesField({
  owners,
  path,
  value,
}: {
  readonly owners: readonly FieldOwner[];
  readonly path: string;
  readonly value: unknown;
}) {
  const set = useSetField();
  const photos = useApp((state) => state.cabinet.photos);
  const ids: readonly string[] = Array.isArray(value) ? value : [];
  if (ids.length === 0) return null;
  const left = (id: string) => ids.filter((one) => one !== id);
  return (
    <fieldset className="rows-field">
      <legend>{wordField(path).label}</legend>
      <ul className="field-pictures">
        {ids.map((id, index) => {
          const photo = photos?.find((one) => one.id === id);
          const caption = photo?.caption ?? editWords.inspector.pictures.picture(index + 1);
          return (
            <li key={id}>
              {photo !== undefined && <img src={`data:${photo.mediaType};base64,${photo.data}`} alt={caption} />}
              <button
                type="button"
                className="icon-button"
                aria-label={editWords.inspector.pictures.remove(caption)}
                onClick={() => set(owners, path, left(id).length === 0 ? null : left(id))}
              >
                <X size={14} aria-hidden="true" />
              </button>
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}
