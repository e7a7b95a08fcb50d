import { fail, makeProblem, ok } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { type FieldOwner, setFields } from './setFields.ts';
import type { EditResult, RecordOf } from './types.ts';
import { freeSharedId, Work } from './work.ts';

/** The fields that hold ids of photos. */
export type PictureField = 'photos' | 'cabinetPhotos';
export type NewPicture = Omit<RecordOf<'photos'>, 'id'>;

const mostPhotos = 500;

/** Adds a photo to the cabinet, and to what it shows. Refused: more photos than a file or a thing holds. */
export function addPicture(content: CabinetContent, of: FieldOwner, field: PictureField, picture: NewPicture): EditResult {
  const work = new Work(content);
  const photos = work.all('photos');
  if (photos.length >= mostPhotos) return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'photos', maximum: mostPhotos } }));
  const id = freeSharedId(photos, 'photo-');
  work.put('photos', { ...picture, id });
  const kept = work.finish();
  const shown = setFields(kept.cabinet, [{ of, path: [field], value: [...picturesOf(content, of, field), id] }]);
  return shown.ok ? ok({ ...shown.value, added: [...kept.added, ...shown.value.added] }) : shown;
}

/**
 * Takes a photo away from what it shows, and out of the cabinet where nothing else in it shows it.
 *
 * @param keep it stays in the cabinet all the same, because something outside of it names it
 */
export function removePicture(content: CabinetContent, of: FieldOwner, field: PictureField, id: string, keep: boolean): EditResult {
  const left = picturesOf(content, of, field).filter((one) => one !== id);
  const hidden = setFields(content, [{ of, path: [field], value: left.length === 0 ? null : left }]);
  if (!hidden.ok || keep || isShown(hidden.value.cabinet, id)) return hidden;
  const work = new Work(hidden.value.cabinet);
  work.drop('photos', id);
  const { cabinet, removed } = work.finish();
  return ok({ ...hidden.value, cabinet, removed: [...hidden.value.removed, ...removed] });
}

function picturesOf(content: CabinetContent, of: FieldOwner, field: PictureField): readonly string[] {
  if (of.in === 'cabinet') return field === 'cabinetPhotos' ? (content.cabinetPhotos ?? []) : [];
  if (field === 'cabinetPhotos') return [];
  if (of.in === 'controller') return content.controller?.photos ?? [];
  return of.in === 'units' ? (content.units?.find(({ id }) => id === of.id)?.photos ?? []) : [];
}

function isShown({ cabinetPhotos = [], controller, units = [] }: CabinetContent, id: string): boolean {
  return [cabinetPhotos, controller?.photos ?? [], ...units.map(({ photos }) => photos ?? [])].some((ids) => ids.includes(id));
}
