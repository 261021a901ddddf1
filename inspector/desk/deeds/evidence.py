"""What is added to a report afterwards, who lets its pieces go, and the bundle for whoever inquires into it."""

from inspector.desk.deeds.common import by, person, second, told, why, with_second
from inspector.desk.deeds.exchange import passphrase_for, signing_fields
from inspector.desk.form.asked import Asked, Files, Line, Part, Prose, Tick
from inspector.desk.form.deed import Deed, Done
from inspector.desk.form.values import Values
from inspector.drawings.marks import outcome_word
from inspector.duties.attach import take_out
from inspector.duties.bundle_incident import bundle_incident, check_bundle
from inspector.duties.keep_incident import add_custody, add_statement, close_incident, hold_more
from inspector.duties.keep_key import grouped_key, what_it_proves
from inspector.duties.office import Office
from inspector.duties.release_evidence import release_evidence, release_vehicle
from inspector.duties.tell_incident import IncidentTold
from inspector.language import tr, tr_n
from inspector.refused import Refused


def state(incident: IncidentTold) -> Deed[IncidentTold]:
    """What a witness says."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        add_statement(office, about.ref, given.text("witness"), given.text("text"), given.one("by", str))
        return Done(tr("The statement of {name} is kept.", name=given.text("witness")))

    return Deed(
        "add statement", tr("Add a statement"), tr("A statement to {ref}", ref=incident.ref),
        tr("It is kept as it is written here, and never changed; a later one may correct it."),
        lambda facts, about: (
            Line(key="witness", label=tr("Witness"), needed=True, hint=tr("The name as the witness gave it."),
                 offers=tuple(one.name for one in facts.people), names=(tr("witness"),)),
            Prose(key="text", label=tr("Statement"), needed=True, hint=tr("In the witness's own words."),
                  names=(tr("statement"),)),
            by(facts),
        ),
        do, tr("Keep the statement"), fits=_is_open,
    )  # fmt: skip


def hand_over(incident: IncidentTold) -> Deed[IncidentTold]:
    """Who holds pieces from now on."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        tags = _ticked(about, given, cars=False)
        with office.book.together():  # all of them or none
            for tag in tags:
                add_custody(office, about.ref, tag, given.text("holder"), given.text("text"), given.one("by", str))
        head = tr("{tags}: with {name} from now on.", tags=", ".join(tags), name=given.text("holder"))
        return Done(head)

    return Deed(
        "hand evidence over", tr("Who holds a piece"), tr("Who holds pieces of {ref}", ref=incident.ref),
        tr("Each time a piece that is kept changes hands it is written down. Who takes it over signs on the evidence "
           "list."),
        lambda facts, about: (
            Line(key="holder", label=tr("Who has them now"), needed=True, names=(tr("holder"),),
                 offers=tuple(one.name for one in facts.people), hint=tr("The name as stated.")),
            Part(tr("Which pieces"), _ticks(about, cars=False)),
            Part("", (Prose(key="text", label=tr("Where, which seal"), names=(tr("text"),)), by(facts))),
        ),
        do, tr("Write it down"),
        fits=lambda about: _is_open(about) or ("" if about.kept else tr("Nothing is kept for it.")),
    )  # fmt: skip


def hold(incident: IncidentTold) -> Deed[IncidentTold]:
    """One more piece belongs to it."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        judged = hold_more(office, about.ref, given.text("tag"), given.text("why"), given.one("by", str))
        tag = judged.dossier.item.tag
        return Done(tr("{tag} is kept as found.", tag=tag), told("", judged).text)

    return Deed(
        "hold evidence", tr("Keep one more piece"), tr("Keep one more piece for {ref}", ref=incident.ref),
        tr("A piece that turns out to belong to the accident is kept as it is found: no cleaning, no repair, no use."),
        lambda facts, about: (
            Line(key="tag", label=tr("Tag"), needed=True, names=(tr("tag"),)),
            why(needed=True, label=tr("How it belongs to it")),
            by(facts),
        ),
        do, tr("Keep it as found"),
        fits=lambda about: _is_open(about) or (tr("Nothing is kept for a near miss.") if about.is_near_miss else ""),
    )  # fmt: skip


def release(incident: IncidentTold) -> Deed[IncidentTold]:
    """Two competent persons let pieces and vehicles go."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        tags = _ticked(about, given, cars=True)
        given_by = {"second": given.one("second", str), "why": given.text("why"), "by": given.one("by", str)}
        cars = [tag for tag in tags if tag in about.kept_vehicles]
        office = with_second(office, given)
        with office.book.together():  # all of them or none
            broken = {one.tag for one in about.held if one.is_broken}  # without any nobody is asked
            whole = broken if broken and given.tick("whole") else set()
            freed = [release_evidence(office, about.ref, tag, whole=tag in whole, **given_by)
                     for tag in tags if tag not in cars]  # fmt: skip
            for tag in cars:
                release_vehicle(office, about.ref, tag, **given_by)
        lines = [tr("{tag}: {outcome}. {plain}", tag=one.dossier.item.tag, plain=one.explanation.plain,
                    outcome=outcome_word(one.verdict.outcome)) for one in freed]  # fmt: skip
        return Done(tr("Released: {tags}.", tags=", ".join(tags)), "\n".join(lines))

    return Deed(
        "release evidence", tr("Release pieces or vehicles"), tr("Release from {ref}", ref=incident.ref),
        tr("Two different competent persons let go what need not be kept any longer. A piece stays on hold until it "
           "has been inspected; one that broke, until two have answered that as well."),
        lambda facts, about: (
            Part(tr("What is let go"), _ticks(about, cars=True)),
            Part("", (
                *_answers_breaks(about),
                why(needed=True, label=tr("Why it need not be kept"), hint=tr("And who agreed.")),
                *second(facts, needed=True),
                person(facts, "by", tr("First name"), names=(tr("released by"), tr("by")),
                       nobody=tr("whoever is at the desk")),
            )),
        ),
        do, tr("Release them"),
        fits=lambda about: "" if about.held or about.kept_vehicles else tr("Nothing is kept for it."),
    )  # fmt: skip


def close(incident: IncidentTold) -> Deed[IncidentTold]:
    """Close the report."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        close_incident(office, about.ref, given.text("text"), given.one("by", str))
        return Done(tr("{ref} is closed.", ref=about.ref))

    return Deed(
        "close incident", tr("Close the report"), tr("Close the report {ref}", ref=incident.ref),
        tr("A closed report takes nothing more; what is new is reported as an incident of its own."),
        lambda facts, about: (
            Prose(key="text", label=tr("What came of it"), needed=True, names=(tr("outcome"),)),
            by(facts),
        ),
        do, tr("Close it"),
        fits=lambda about: _is_open(about) or _still_keeps(about),
    )  # fmt: skip


def bundle(incident: IncidentTold) -> Deed[IncidentTold]:
    """All of it in a folder."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        made = bundle_incident(office, about.ref, given.files("folder")[0], passphrase_for(given))
        head = tr("{count} files in {folder}; evidence list {number}.", count=len(made.files), folder=made.folder,
                  number=made.number)  # fmt: skip
        told = [tr("sha256 of the checksum file: {sha256}", sha256=made.sums_sha256)]
        if made.key:
            told += [tr("Signed with the key {key}.", key=grouped_key(made.key)), what_it_proves()]
        return Done(head, "\n".join(told))

    return Deed(
        "bundle incident", tr("Bundle all of it"), tr("Bundle {ref} into a folder", ref=incident.ref),
        tr("Evidence list, report, rig, verdicts of that day and all files go into a new folder with checksums, for "
           "whoever inquires into it. It can be proved later that nothing in it was changed."),
        lambda facts, about: (
            Files(key="folder", label=tr("New folder"), folder=True, new=True, needed=True, names=(tr("folder"),)),
            *signing_fields(),
        ),
        do, tr("Write the bundle"),
    )  # fmt: skip


def files_out(incident: IncidentTold) -> Deed[IncidentTold]:
    """Its files into a folder."""

    def do(office: Office, about: IncidentTold, given: Values) -> Done:
        written = take_out(office, about.ref, given.files("folder")[0])
        head = tr_n("One file is written.", "{count} files are written.", len(written))
        return Done(head, "\n".join(str(one) for one in written))

    return Deed(
        "take files out", tr("Take its files out"), tr("Take the files of {ref} out", ref=incident.ref),
        tr("Photos and papers are written into a folder; what lies there already stays as it is."),
        lambda facts, about: (
            Files(key="folder", label=tr("Folder"), folder=True, new=True, needed=True, names=(tr("folder"),)),
        ),
        do, tr("Write them"),
    )  # fmt: skip


def check(_: None = None) -> Deed[None]:
    """Whether a bundle was changed."""

    def do(office: Office, about: None, given: Values) -> Done:
        faults = check_bundle(office, given.files("folder")[0])
        if not faults:
            return Done(tr("Nothing was changed."), tr("The bundle is as the register wrote it."))
        head = tr_n("{count} fault found.", "{count} faults found.", len(faults))
        return Done(head, "\n".join(f"{one.where}: {one.why}" for one in faults))

    return Deed(
        "check bundle", tr("Check a bundle"), tr("Check a bundle"),
        tr("Proves that nothing in the folder was changed, taken away or put in since the register wrote it."),
        lambda facts, about: (Files(key="folder", label=tr("Folder"), folder=True, needed=True),),
        do, tr("Check it"),
    )  # fmt: skip


def _is_open(about: IncidentTold) -> str:
    return tr("The report is closed.") if about.is_closed else ""


def _still_keeps(about: IncidentTold) -> str:
    kept = [*(one.tag for one in about.kept), *about.kept_vehicles]
    return tr("Still kept as evidence: {tags}.", tags=", ".join(kept)) if kept else ""


def _ticks(about: IncidentTold, *, cars: bool) -> tuple[Asked, ...]:
    """A tick for each piece that is kept; where things are let go, for each that broke and for each vehicle as well."""
    names, pieces = (tr("tag"), tr("vehicle")), about.held if cars else about.kept
    found = [Tick(key=f"tag {one.tag}", label=f"{one.tag} · {one.kind_name}", names=names) for one in pieces]
    if cars:
        found += [Tick(key=f"tag {tag}", label=f"{tag} · {name}", names=names)
                  for tag, name, _ in about.vehicles if tag in about.kept_vehicles]  # fmt: skip
    return tuple(found)


def _answers_breaks(about: IncidentTold) -> tuple[Tick, ...]:
    broken = ", ".join(one.tag for one in about.held if one.is_broken)
    label = tr("What broke is answered: the reason says how it is whole again, or was named wrongly")
    hint = tr("It broke or let go: {tags}.", tags=broken)
    return (Tick(key="whole", label=label, hint=hint, names=(tr("whole"),)),) if broken else ()


def _ticked(about: IncidentTold, given: Values, *, cars: bool) -> list[str]:
    every = [*(one.tag for one in (about.held if cars else about.kept)), *(about.kept_vehicles if cars else ())]
    tags = [tag for tag in every if given.tick(f"tag {tag}")]
    if not tags:
        raise Refused(tr("tag"), tr("Nothing is ticked."), tr("Tick what is meant."))
    return tags
