import { jsonPointer, makeProblem, type Problem } from '../../base/index.ts';
import { type CabinetContent, faultModes } from '../../schema/index.ts';
import { cableName, unitName } from '../../topology/index.ts';
import { installedNumbers } from '../installedNumbers.ts';

/** Parts and tables: spares that are equal to nothing installed, rates of unknown modes, fields that do not belong to a kind. */
export function checkParts(content: CabinetContent): readonly Problem[] {
  return [...spares(content), ...rates(content), ...kinds(content), ...feedbackAxes(content)];
}

/**
 * A spare whose part number is that of no part of its kind in the cabinet. Not named: a spare marked as not fitting, one without a
 * number, and one of a kind for which the cabinet documents no number at all.
 */
function spares(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  for (const [index, spare] of (content.spares ?? []).entries()) {
    const partNumber = spare.partNumber?.trim();
    const known = installedNumbers(content, spare.kind);
    if (!partNumber || spare.fits === 'no' || known.size === 0 || known.has(partNumber)) continue;
    const facts = { spare: spare.designation?.trim() || spare.id, partNumber, kind: spare.kind };
    problems.push(
      makeProblem('spare-unequal', 'warning', { where: jsonPointer(['spares', index, 'partNumber']), subjects: [spare.id], facts }),
    );
  }
  return problems;
}

function rates(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const [index, { item, mode }] of (content.rates ?? []).entries()) {
    const where = jsonPointer(['rates', index, 'mode']);
    const modes: readonly string[] = faultModes[item];
    if (!modes.includes(mode)) problems.push(makeProblem('rate-mode-unknown', 'warning', { where, facts: { item, mode } }));
    else if (seen.has(`${item}/${mode}`)) problems.push(makeProblem('rate-doubled', 'warning', { where, facts: { item, mode } }));
    seen.add(`${item}/${mode}`);
  }
  return problems;
}

function kinds(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  for (const [index, unit] of (content.units ?? []).entries()) {
    const about = (field: string) => ({
      where: jsonPointer(['units', index, field]),
      subjects: [unit.id],
      facts: { unit: unitName(unit) },
    });
    if (unit.kind === 'supply' && unit.axes !== undefined && unit.axes.length > 0)
      problems.push(makeProblem('axes-on-supply', 'warning', about('axes')));
    if (unit.kind !== 'supply' && unit.supply !== undefined)
      problems.push(makeProblem('supply-ratings-on-unit', 'warning', about('supply')));
  }
  return problems;
}

/** A feedback cable that names an axis which its unit, by its own list of axes, does not drive. */
function feedbackAxes(content: CabinetContent): readonly Problem[] {
  const problems: Problem[] = [];
  const units = new Map((content.units ?? []).map((unit) => [unit.id, unit]));
  for (const [index, feedback] of (content.feedbacks ?? []).entries()) {
    const unit = units.get(feedback.unit);
    const axis = feedback.axis?.trim();
    if (unit?.axes === undefined || unit.axes.length === 0 || !axis || unit.axes.some(({ name }) => name.trim() === axis)) continue;
    const facts = { feedback: cableName(feedback), unit: unitName(unit), axis };
    problems.push(
      makeProblem('feedback-axis-unknown', 'warning', {
        where: jsonPointer(['feedbacks', index, 'axis']),
        subjects: [feedback.id, unit.id],
        facts,
      }),
    );
  }
  return problems;
}
