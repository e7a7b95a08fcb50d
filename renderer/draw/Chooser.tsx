import { Autocomplete, Dialog, Heading, Input, Label, Menu, MenuItem, Modal, ModalOverlay, SearchField } from 'react-aria-components';
import { drawWords } from '../../engine/messages/index.ts';

/** One line of a list to choose from. */
export interface Choice {
  readonly id: string;
  readonly words: string;
  readonly detail?: string;
  readonly keys?: string;
  /** Why it cannot be chosen now. */
  readonly disabled?: string;
  /** Other words by which it is found. */
  readonly also?: string;
}

interface ChooserProps {
  readonly title: string;
  readonly label: string;
  readonly choices: readonly Choice[];
  /** What is said when there is nothing to choose. */
  readonly empty: string;
  readonly onChoose: (id: string) => void;
  readonly onClose: () => void;
}

/** Everything by which a line is found. */
const textOf = ({ words, detail = '', also = '' }: Choice) => `${words} ${detail} ${also}`;

/** Every word typed must occur somewhere, in any order. */
const hasAllWords = (text: string, typed: string) =>
  typed
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.toLowerCase().includes(word));

/** A list that is narrowed by typing; arrows and Enter choose. */
export function Chooser({ title, label, choices, empty, onChoose, onClose }: ChooserProps) {
  /** Enter before any line is marked: the first one that fits. */
  const chooseFirst = (typed: string) => {
    const first = choices.find((choice) => choice.disabled === undefined && hasAllWords(textOf(choice), typed));
    if (!first) return;
    onClose();
    onChoose(first.id);
  };
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && onClose()} className="overlay chooser-overlay">
      <Modal className="modal chooser">
        <Dialog className="sheet">
          <Heading slot="title">{title}</Heading>
          <Autocomplete filter={hasAllWords}>
            <SearchField className="chooser-field" onSubmit={chooseFirst}>
              <Label className="screen-reader">{label}</Label>
              <Input autoFocus placeholder={label} />
            </SearchField>
            {/* Long lists scroll in it, also by keyboard. */}
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
            <section className="chooser-list" tabIndex={0} aria-label={title}>
              <Menu
                aria-label={title}
                className="menu"
                items={choices}
                onAction={(key) => {
                  onClose();
                  onChoose(String(key));
                }}
                renderEmptyState={() => <p className="empty">{choices.length === 0 ? empty : drawWords.chooser.nothingFits}</p>}
              >
                {(choice: Choice) => (
                  <MenuItem
                    id={choice.id}
                    className="menu-item chooser-item"
                    textValue={textOf(choice)}
                    isDisabled={choice.disabled !== undefined}
                  >
                    <span className="menu-text">{choice.words}</span>
                    <span className="chooser-detail">{choice.disabled ?? choice.detail}</span>
                    {choice.keys !== undefined && <kbd>{choice.keys}</kbd>}
                  </MenuItem>
                )}
              </Menu>
            </section>
          </Autocomplete>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
