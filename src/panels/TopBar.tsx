/** The top strip: the model, its history, and how the bench is looked at. */
import './topBar.css';
import { useStore } from 'zustand';
import { documentStore, view } from '../state/bench.ts';
import {
  LayerChecks,
  MenuPart,
  SheetButton,
  ShellChoice,
  UnitChoice,
  ViewpointChoice,
} from './choices.tsx';
import { FilesMenu } from './FilesMenu.tsx';
import { toggleHold } from './hold.ts';
import { Icon, type IconName, Mark } from './icons.tsx';
import { Menu } from './Menu.tsx';
import { openSheet } from './sheets.ts';
import { hasSheet, type PageSize, usePageSize } from './size.ts';

function IconButton({
  icon,
  label,
  keys,
  isDisabled = false,
  onClick,
}: {
  icon: IconName;
  label: string;
  keys?: string;
  isDisabled?: boolean;
  onClick: () => void;
}) {
  return (
    <button
      type="button"
      className="bar-button bar-icon"
      aria-label={label}
      title={keys === undefined ? label : `${label} (${keys})`}
      disabled={isDisabled}
      onClick={onClick}
    >
      <Icon name={icon} />
    </button>
  );
}

function History() {
  const canUndo = useStore(documentStore, (state) => state.past.length > 0);
  const canRedo = useStore(documentStore, (state) => state.future.length > 0);
  return (
    <div className="bar-part">
      <IconButton
        icon="undo"
        label="Undo"
        keys="Ctrl+Z"
        isDisabled={!canUndo}
        onClick={documentStore.undo}
      />
      <IconButton
        icon="redo"
        label="Redo"
        keys="Ctrl+Shift+Z"
        isDisabled={!canRedo}
        onClick={documentStore.redo}
      />
    </div>
  );
}

function Hold() {
  const isHeld = useStore(documentStore, (state) => state.held !== null);
  return (
    <button
      type="button"
      className="bar-button bar-hold"
      aria-pressed={isHeld}
      title={
        isHeld
          ? 'Let the held design go (H)'
          : 'Keep the present design as a ghost, a grey curve and the base of all differences (H)'
      }
      onClick={toggleHold}
    >
      {isHeld ? 'Let go of yesterday' : 'Hold as yesterday'}
    </button>
  );
}

function ThemeButton() {
  const theme = useStore(view, (state) => state.theme);
  const other = theme === 'light' ? 'dark' : 'light';
  return (
    <IconButton
      icon={theme === 'light' ? 'moon' : 'sun'}
      label={`Change to the ${other} theme`}
      onClick={() => view.setState({ theme: other })}
    />
  );
}

function PageButtons() {
  return (
    <div className="bar-part">
      <ThemeButton />
      <IconButton icon="help" label="Keys and help" keys="?" onClick={() => openSheet('help')} />
    </div>
  );
}

function ViewMenu({ size }: { size: PageSize }) {
  const isSmall = hasSheet(size);
  if (size === 'wide' || size === 'vast') {
    return (
      <Menu label="Drawings" title="Drawings in the scene">
        <LayerChecks />
      </Menu>
    );
  }
  return (
    <Menu label={isSmall ? <Icon name="menu" /> : 'View'} title="View">
      {isSmall && (
        <>
          <MenuPart title="Viewpoint">
            <ViewpointChoice />
          </MenuPart>
          <MenuPart title="Compare">
            <Hold />
            <SheetButton sheet="fitment">Wheel and tyre…</SheetButton>
            <SheetButton sheet="papers">Papers…</SheetButton>
          </MenuPart>
        </>
      )}
      <MenuPart title="Wheel and tyre">
        <ShellChoice />
      </MenuPart>
      <MenuPart title="Unit of length">
        <UnitChoice />
      </MenuPart>
      <MenuPart title="Drawings in the scene">
        <LayerChecks />
      </MenuPart>
      {isSmall && (
        <MenuPart title="The page">
          <PageButtons />
        </MenuPart>
      )}
    </Menu>
  );
}

export function TopBar() {
  const size = usePageSize();
  const isWide = size === 'wide' || size === 'vast';
  return (
    <header className="top-bar" data-panel="top">
      <h1 className="top-bar-name">
        <Mark />
        <span>Armscribe</span>
      </h1>
      <FilesMenu />
      <History />
      {!hasSheet(size) && <Hold />}
      <span className="bar-space" />
      {!hasSheet(size) && <ViewpointChoice />}
      {isWide && <ShellChoice />}
      <ViewMenu size={size} />
      {isWide && <UnitChoice />}
      {!hasSheet(size) && <PageButtons />}
    </header>
  );
}
