"""The look as Qt's style sheet, written from the roles."""

from collections.abc import Callable, Mapping

_RULES = """
QWidget {{ color: {ink}; font-family: "{family}"; font-size: {body}px; }}
QMainWindow, QScrollArea, QWidget#page {{ background: {paper}; border: none; }}
QLabel {{ background: transparent; }}
QLabel[tier="small"] {{ font-size: {small}px; }}
QLabel[tier="head"] {{ font-size: {head}px; font-weight: bold; }}
QLabel[tier="display"] {{ font-size: {display}px; font-weight: bold; }}
QLabel[ink="faint"] {{ color: {faint}; }}
QLabel[weight="bold"] {{ font-weight: bold; }}
QLabel#paper {{ background: white; }}
QFrame#hairline {{ background: {hair}; border: none; }}
QFrame#notice {{ background: {band}; border: none; border-left: {g4}px solid {ink}; }}

QLineEdit, QPlainTextEdit, QDateEdit, QComboBox {{
    background: {field}; border: 1px solid {hair}; border-radius: {g3}px; padding: {g5}px {g8}px;
    selection-background-color: {ink}; selection-color: {paper}; }}
QLineEdit:focus, QPlainTextEdit:focus, QDateEdit:focus, QComboBox:focus {{ border: 1px solid {ink}; }}
QLineEdit#search {{ font-size: {head}px; padding: {g8}px {g12}px; min-height: {g30}px; }}
QLineEdit[fault="true"] {{ border: 2px solid {ink}; border-style: dashed; }}
QDateEdit QLineEdit {{ border: none; padding: 0; background: transparent; }}
QComboBox::drop-down {{ border: none; width: {g24}px; }}
QComboBox::down-arrow {{ image: none; }}
QComboBox QAbstractItemView {{ background: {field}; border: 1px solid {hair}; selection-background-color: {band};
    selection-color: {ink}; outline: none; }}
QDateEdit::up-button, QDateEdit::down-button {{ width: 0; border: none; }}

QPushButton, QToolButton {{
    background: transparent; border: 1px solid {hair}; border-radius: {g3}px; padding: {g6}px {g12}px; }}
QPushButton:hover, QToolButton:hover {{ background: {band}; }}
QPushButton:focus, QToolButton:focus {{ border: 1px solid {ink}; background: {band}; }}
QPushButton:disabled {{ color: {faint}; border: 1px dashed {hair}; }}
QPushButton[rank="first"] {{ background: {ink}; color: {paper}; border: 1px solid {ink}; font-weight: bold; }}
QPushButton[rank="first"]:focus {{ border: 2px solid {faint}; }}
QPushButton[rank="first"]:disabled {{ background: transparent; color: {faint}; border: 1px dashed {hair}; }}
QPushButton[rank="grade"] {{ padding: {g4}px {g8}px; }}
QPushButton[rank="grade"]:checked {{ background: {ink}; color: {paper}; border: 1px solid {ink}; }}
QPushButton[rank="filter"] {{ border: none; border-bottom: 2px solid transparent; border-radius: 0;
    padding: {g6}px {g8}px; }}
QPushButton[rank="filter"]:checked {{ border-bottom: 2px solid {ink}; }}
QPushButton[rank="filter"]:focus {{ background: {band}; }}
QToolButton[rank="disclosure"] {{ border: none; font-weight: bold; font-size: {head}px;
    padding: {g4}px {g4}px {g4}px 0; }}
QToolButton[rank="disclosure"]:focus {{ background: {band}; }}
QPushButton[rank="answer"] {{ text-align: left; }}
QPushButton[rank="answer"]:checked {{ background: {ink}; border: 1px solid {ink}; }}
QPushButton[rank="answer"]:focus {{ background: transparent; border: 2px dashed {ink}; }}
QPushButton[rank="answer"]:checked:focus {{ background: {ink}; border: 2px solid {faint}; }}
QFrame#question {{ border: none; border-left: {g4}px solid transparent; }}
QFrame#question:focus {{ border-left: {g4}px solid {ink}; }}
QPushButton[rank="place"] {{ border: none; border-left: {g3}px solid transparent; border-radius: 0; text-align: left;
    padding: {g8}px {g8}px; }}
QPushButton[rank="place"]:checked {{ border-left: {g3}px solid {ink}; font-weight: bold; }}
QPushButton[rank="place"]:focus {{ background: {band}; }}
QCheckBox {{ spacing: {g8}px; padding: {g4}px 0; }}
QCheckBox:focus {{ background: {band}; }}
QCheckBox::indicator {{ width: {g12}px; height: {g12}px; border: 1px solid {faint}; background: {field}; }}
QCheckBox::indicator:checked {{ background: {ink}; border: {g3}px solid {field}; outline: none; }}
QListWidget#some {{ background: {field}; border: 1px solid {hair}; border-radius: {g3}px; outline: none; }}
QListWidget#some:focus {{ border: 1px solid {ink}; }}
QListWidget#some::item {{ padding: {g4}px; border: none; }}
QListWidget#some::item:selected {{ background: {band}; color: {ink}; }}
QListWidget#some::indicator {{ width: {g12}px; height: {g12}px; border: 1px solid {faint}; background: {field}; }}
QListWidget#some::indicator:checked {{ background: {ink}; border: 1px solid {ink}; }}
QTableView::indicator {{ width: {g12}px; height: {g12}px; border: 1px solid {faint}; background: {field}; }}
QTableView::indicator:checked {{ background: {ink}; border: 1px solid {ink}; }}
QTableView::indicator:indeterminate {{ background: {hair}; border: 1px solid {ink}; }}
QPushButton[rank="tag"] {{ border: none; text-align: left; font-weight: bold; text-decoration: underline;
    padding: {g6}px 0; }}
QPushButton[rank="tag"]:focus {{ background: {band}; }}
QPushButton[rank="thumb"] {{ padding: 0; }}
QWidget[touch="true"] QPushButton {{ min-height: {g36}px; }}
QWidget[touch="true"] QLineEdit, QWidget[touch="true"] QComboBox {{ min-height: {g36}px; }}
QWidget[touch="true"] QComboBox QAbstractItemView::item {{ min-height: {g48}px; }}

QFrame#grade {{ border: none; border-left: {g4}px solid transparent; }}
QFrame#grade:focus {{ background: {band}; border-left: {g4}px solid {ink}; }}

QFrame#grade[open="true"] {{ border: 1px dashed {ink}; border-left: {g4}px solid {ink}; }}
QFrame#grade[lit="true"] {{ background: {band}; border: 2px solid {ink}; border-left: {g4}px solid {ink}; }}

QListView {{ background: {paper}; border: none; outline: none; }}
QListWidget::item {{ padding: {g6}px {g8}px; border-left: {g4}px solid transparent; }}
QListWidget::item:selected {{ background: {band}; color: {ink}; border-left: {g4}px solid {ink}; }}
QSlider::groove:horizontal {{ background: {hair}; height: {g4}px; border-radius: {g2}px; }}
QSlider::sub-page:horizontal {{ background: {faint}; border-radius: {g2}px; }}
QSlider::handle:horizontal {{ background: {ink}; width: {g12}px; margin: -{g8}px 0; border-radius: {g3}px; }}
QSlider:focus {{ background: {band}; }}

QTableView {{ background: {paper}; border: none; gridline-color: transparent; outline: none;
    selection-background-color: {band}; selection-color: {ink}; }}
QTableView::item {{ padding: 0 {g8}px; }}
QListView {{ background: {paper}; border: none; outline: none; }}
QListWidget::item {{ padding: {g6}px {g8}px; border-bottom: 1px solid {hair}; color: {ink}; }}
QListWidget::item:selected {{ background: {band}; color: {ink}; }}
QTableCornerButton::section {{ background: {paper}; border: none; }}
QHeaderView {{ background: {paper}; border: none; }}
QHeaderView::section {{ background: {paper}; color: {faint}; font-size: {small}px; border: none;
    border-bottom: 1px solid {hair}; padding: {g4}px {g8}px {g4}px {g11}px; }}

QMenuBar, QMenu, QStatusBar {{ background: {paper}; }}
QMenuBar::item {{ padding: {g4}px {g8}px; background: transparent; }}
QMenuBar::item:selected, QMenu::item:selected {{ background: {band}; }}
QMenu {{ border: 1px solid {hair}; padding: {g4}px; }}
QMenu::item {{ padding: {g6}px {g24}px {g6}px {g24}px; }}
QMenu::item:disabled {{ color: {faint}; }}
QMenu::separator {{ height: 1px; background: {hair}; margin: {g4}px; }}
QStatusBar {{ border-top: 1px solid {hair}; }}
QStatusBar::item {{ border: none; }}
QStatusBar QLabel {{ font-size: {small}px; color: {faint}; padding: {g2}px {g8}px; }}
QToolTip {{ background: {band}; color: {ink}; border: 1px solid {hair}; padding: {g4}px; }}
QProgressBar {{ background: {band}; border: none; max-height: {g4}px; }}
QProgressBar::chunk {{ background: {ink}; }}
QScrollBar:vertical {{ background: transparent; width: {g12}px; margin: 0; }}
QScrollBar::handle:vertical {{ background: {hair}; border-radius: {g3}px; min-height: {g24}px; margin: 2px; }}
QScrollBar:horizontal {{ background: transparent; height: {g12}px; margin: 0; }}
QScrollBar::handle:horizontal {{ background: {hair}; border-radius: {g3}px; min-width: {g24}px; margin: 2px; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
"""

_LENGTHS = (2, 3, 4, 5, 6, 8, 11, 12, 24, 30, 36, 48)


def style_sheet(family: str, colours: Mapping[str, str], sizes: Mapping[str, int], px: Callable[[float], int]) -> str:
    """Every rule with the colours by role, the sizes of type in pixels, and px to turn a length into pixels."""
    return _RULES.format(family=family, **colours, **sizes, **{f"g{length}": px(length) for length in _LENGTHS})
