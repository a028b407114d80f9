"""Theme: a palette as Qt palette and style sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QGridLayout, QLayout, QWidget

from meterlog.window.tick_sign import tick_file

if TYPE_CHECKING:
    from meterlog.evidence.palette import Palette

FIRST_GROUND = "#f1eee6"
FIRST_INK = "#16252b"
"""The day palette's, known here so that the first paint need not wait for anything to load."""

_SHEET = """
* {{ font-size: {px}px; }}
QWidget {{ background: {ground}; color: {ink}; }}
QLabel, QCheckBox {{ background: transparent; }}
QLabel[rank="second"] {{ color: {faint}; }}
QLabel[rank="title"] {{ font-size: {title}px; font-weight: bold; }}
QLabel[rank="mark"] {{ background: {caution}; color: {on_caution}; font-weight: bold;
    border: 2px solid {on_caution}; padding: 1px {pad}px; }}
QLabel[rank="alert"] {{ background: {alert}; color: {on_alert}; font-weight: bold;
    padding: {half}px {pad}px; }}
QLabel[rank="caution"] {{ background: {caution}; color: {on_caution}; font-weight: bold;
    padding: {half}px {pad}px; }}
QLabel[rank="note"] {{ font-weight: bold;
    padding: {half}px {pad}px; }}
QFrame[rank="panel"] {{ background: {panel}; border: 1px solid {edge}; border-radius: 3px; }}
QFrame[rank="panel"] QLabel {{ border: none; }}
QWidget[rank="room"] {{ background: transparent; }}
QLineEdit, QComboBox, QSpinBox, QListWidget, QTableWidget, QPlainTextEdit {{ background: {panel};
    color: {ink}; border: 1px solid {edge}; border-radius: 3px; padding: {half}px; }}
QLineEdit:focus, QComboBox:focus, QSpinBox:focus, QListWidget:focus, QTableWidget:focus {{
    border: 2px solid {accent}; }}
QComboBox QAbstractItemView {{ background: {panel}; color: {ink};
    selection-background-color: {accent}; selection-color: {on_accent}; }}
QPushButton {{ background: {panel}; color: {ink}; border: 1px solid {edge}; border-radius: 3px;
    padding: {half}px {pad}px; min-height: {button}px; }}
QPushButton:hover {{ border-color: {ink}; }}
QPushButton:focus {{ border: 2px solid {accent}; }}
QPushButton:checked, QPushButton[rank="first"] {{ background: {accent}; color: {on_accent};
    border-color: {accent}; }}
QPushButton[rank="start"] {{ font-weight: bold; border: 2px solid {ink}; }}
QPushButton[rank="stop"] {{ font-weight: bold; background: {alert}; color: {on_alert};
    border: 2px solid {alert}; }}
QPushButton:disabled {{ color: {faint}; border-style: dashed; background: {ground}; }}
QCheckBox::indicator {{ width: {box}px; height: {box}px; background: {panel};
    border: 2px solid {ink}; border-radius: 3px; }}
QCheckBox::indicator:checked {{ background: {accent}; border: 2px solid {accent}; {tick} }}
QCheckBox::indicator:disabled {{ background: {ground}; border: 1px dashed {faint}; }}
QCheckBox {{ spacing: {pad}px; }}
QCheckBox:focus {{ text-decoration: underline; }}
QHeaderView::section {{ background: {ground}; color: {faint}; border: none;
    border-bottom: 1px solid {edge}; padding: 2px; }}
QListWidget::item {{ border-bottom: 1px solid {rule}; padding: {half}px 2px; }}
QListWidget::item:selected, QTableWidget::item:selected {{ background: {accent};
    color: {on_accent}; }}
QScrollBar {{ background: {ground}; border: none; width: {bar}px; height: {bar}px; margin: 0; }}
QScrollBar::handle {{ background: {edge}; border-radius: 3px; min-height: 24px; min-width: 24px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: {ground}; }}
QComboBox::drop-down {{ border: none; width: {button}px; }}
QComboBox::down-arrow {{ image: none; width: 0; height: 0; border-left: {arrow}px solid {panel};
    border-right: {arrow}px solid {panel}; border-top: {arrow}px solid {ink}; }}
QSpinBox::up-button, QSpinBox::down-button {{ border: none; background: transparent;
    width: {button}px; }}
QSpinBox::up-arrow, QSpinBox::down-arrow {{ image: none; width: 0; height: 0;
    border-left: {arrow}px solid {panel}; border-right: {arrow}px solid {panel}; }}
QSpinBox::up-arrow {{ border-bottom: {arrow}px solid {ink}; }}
QSpinBox::down-arrow {{ border-top: {arrow}px solid {ink}; }}
QScrollArea {{ border: none; }}
QToolTip {{ background: {panel}; color: {ink}; border: 1px solid {edge}; }}
"""


def first_sheet(pixels: int) -> str:
    """Give the style sheet of the very first paint."""
    colours = f"background: {FIRST_GROUND}; color: {FIRST_INK};"
    return f"* {{ font-size: {pixels}px; }} QWidget {{ {colours} }}"


def style_sheet(palette: Palette, pixels: int) -> str:
    """Give the style sheet of a palette for text of ``pixels`` height."""
    box = max(round(pixels * 0.9), 12)
    tick = tick_file(palette.on_accent, box)
    return _SHEET.format(
        tick=f"image: url({tick});" if tick else "image: none;",
        px=pixels,
        title=round(pixels * 1.3),
        pad=round(pixels * 0.7),
        half=max(round(pixels * 0.2), 2),
        arrow=max(round(pixels * 0.35), 4),
        bar=max(round(pixels * 0.7), 9),
        button=max(round(pixels * 1.6), 24),
        box=box,
        ground=palette.ground,
        panel=palette.panel,
        ink=palette.ink,
        faint=palette.faint,
        rule=palette.rule,
        edge=palette.edge,
        accent=palette.accent,
        on_accent=palette.on_accent,
        alert=palette.alert,
        on_alert=palette.on_alert,
        caution=palette.caution,
        on_caution=palette.on_caution,
    )


def qt_palette(palette: Palette) -> QPalette:
    """Give the Qt palette, for what no style sheet reaches."""
    colours = QPalette(QColor(palette.ground))
    roles = QPalette.ColorRole
    for role, colour in (
        (roles.Window, palette.ground),
        (roles.Base, palette.panel),
        (roles.Text, palette.ink),
        (roles.WindowText, palette.ink),
        (roles.ButtonText, palette.ink),
        (roles.PlaceholderText, palette.faint),
        (roles.Highlight, palette.accent),
        (roles.HighlightedText, palette.on_accent),
    ):
        colours.setColor(role, QColor(colour))
    return colours


_ROOM_AT = 16
"""Up to this height of text the gaps of a layout are those it was made with."""
_MADE_WITH = "gapsMadeWith"


def space_out(top: QWidget, pixels: int) -> None:
    """Let the gaps between controls grow with the text, as the style's own are in pixels."""
    share = max(1.0, pixels / _ROOM_AT)
    for layout in top.findChildren(QLayout):
        made_with = layout.property(_MADE_WITH)
        if made_with is None:
            made_with = _gaps(layout)
            layout.setProperty(_MADE_WITH, made_with)
        # Minus one is the style's own.
        across, down, *around = (max(round(one * share), -1) for one in made_with)
        if isinstance(layout, QGridLayout):
            layout.setHorizontalSpacing(across)
            layout.setVerticalSpacing(down)
        elif across >= 0:
            layout.setSpacing(across)
        layout.setContentsMargins(*around)


def _gaps(layout: QLayout) -> list[int]:
    """Give the gaps across and down, and the margins: left, top, right, bottom."""
    if isinstance(layout, QGridLayout):
        between = [layout.horizontalSpacing(), layout.verticalSpacing()]
    else:
        between = [layout.spacing()] * 2
    around = layout.contentsMargins()
    return [*between, around.left(), around.top(), around.right(), around.bottom()]


def text_pixels(width: int, height: int) -> int:
    """Give the height of plain text for a window of this size: 12 pixels at 1024 x 600."""
    return max(12, min(round(height / 52), round(width / 88), 44))
