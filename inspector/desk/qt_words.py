"""What Qt says by itself, in the officer's language: the buttons of its dialogs, its days and months."""

from PySide6.QtCore import QLibraryInfo, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from inspector.language import spoken


def speak_of_qt(app: QApplication) -> None:
    """Take Qt's own catalogue of that language, where it has one; English needs none."""
    QLocale.setDefault(QLocale(spoken()))
    translator = QTranslator(app)
    if translator.load(f"qtbase_{spoken()}", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        app.installTranslator(translator)
