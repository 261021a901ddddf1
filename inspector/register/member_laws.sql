-- What the server itself holds a member's login to. Set anew after each migration; {schema} is the register's own.
-- Names are sought there and nowhere else, whatever tables a login has made for itself.

CREATE OR REPLACE FUNCTION severity(outcome text) RETURNS int
LANGUAGE sql STABLE SET search_path = pg_catalog, {schema}, pg_temp AS $$
    SELECT array_position(ARRAY['fit', 'derate', 'hold', 'retire'], outcome)
$$;

CREATE OR REPLACE FUNCTION due(said jsonb) RETURNS date
LANGUAGE sql STABLE SET search_path = pg_catalog, {schema}, pg_temp AS $$
    SELECT least((said ->> 'next_inspection_due')::date, (said #>> '{wall,next_reading_due}')::date)
$$;

-- Whether a verdict is milder than the one that stands: in its outcome, in that for any purpose, in the strength or the
-- day that it gives, or because it was given by another rulebook. What is missing is milder. A retirement is the strictest,
-- whatever it gives: one of an earlier day, told late, still has the strength of that day.
CREATE OR REPLACE FUNCTION is_milder(said jsonb, stands jsonb) RETURNS boolean
LANGUAGE sql STABLE SET search_path = pg_catalog, {schema}, pg_temp AS $$
    SELECT coalesce(severity(said ->> 'outcome') < severity(stands ->> 'outcome'), true)
        OR (said ->> 'rulebook') IS DISTINCT FROM (stands ->> 'rulebook')
        OR (said ->> 'outcome' <> 'retire' AND (
            coalesce(due(said), 'infinity') > coalesce(due(stands), 'infinity')
            OR coalesce(
                (said #>> '{capacity,now_n}')::float8 > (stands #>> '{capacity,now_n}')::float8 * (1 + 1e-9), false
            )
        ))
        OR EXISTS (
            SELECT FROM jsonb_to_recordset(stands -> 'by_purpose') AS was (purpose text, outcome text)
            LEFT JOIN jsonb_to_recordset(said -> 'by_purpose') AS now (purpose text, outcome text) USING (purpose)
            WHERE coalesce(severity(now.outcome) < severity(was.outcome), true)
        )
$$;

CREATE OR REPLACE FUNCTION member_tightens() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, {schema}, pg_temp AS $$
DECLARE
    stands jsonb;
    said jsonb := NEW.body::jsonb;
BEGIN
    SELECT v.body::jsonb INTO stands
        FROM standing s JOIN verdict v ON v.id = s.verdict_id WHERE s.item_id = NEW.item_id;
    IF stands IS NULL OR is_milder(said, stands)
        OR (said ->> 'item_id', said ->> 'outcome', said ->> 'rulebook', (said ->> 'on')::date)
            IS DISTINCT FROM (NEW.item_id::text, NEW.outcome::text, NEW.rulebook_id::text, NEW.day)
    THEN
        RAISE EXCEPTION 'a check of a member may only make a verdict stricter' USING ERRCODE = '42501';
    END IF;
    RETURN NEW;
END $$;

CREATE OR REPLACE FUNCTION member_stands() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, {schema}, pg_temp AS $$
DECLARE
    judged text[] := '{verdict_id,outcome,headline,next_due,holds_until,unloosened}';
    given record;
    said jsonb;
    stood jsonb;
BEGIN
    SELECT * INTO given FROM verdict WHERE id = NEW.verdict_id;
    SELECT body::jsonb INTO stood FROM verdict WHERE id = OLD.verdict_id;
    said := given.body::jsonb;
    IF (to_jsonb(NEW) - judged) IS DISTINCT FROM (to_jsonb(OLD) - judged)
        OR given.item_id IS DISTINCT FROM NEW.item_id
        OR is_milder(said, stood)
        OR (NEW.outcome::text, NEW.unloosened::text, NEW.holds_until, NEW.next_due, NEW.headline) IS DISTINCT FROM (
            said ->> 'outcome', said #>> '{unloosened,outcome}', (said ->> 'holds_until')::date,
            CASE WHEN NEW.outcome <> 'retire' THEN due(said) END, given.words::jsonb ->> 'headline'
        )
    THEN
        RAISE EXCEPTION 'what stands of a piece must be what its last verdict says' USING ERRCODE = '42501';
    END IF;
    RETURN NEW;
END $$;

-- The hash of a line as the program takes it: of its columns as JSON without spaces.
CREATE OR REPLACE FUNCTION line_hash(line ledger) RETURNS text
LANGUAGE sql STABLE SET search_path = pg_catalog, {schema}, pg_temp AS $$
    SELECT encode(sha256(convert_to(concat(
        '[', line.number, ',', to_json(line.origin::text), ',', to_json(line.at::text), ',', to_json(line.by::text), ',',
        to_json(line.deed::text), ',', to_json(line.body), ',', to_json(line.before::text), ']'
    ), 'UTF8')), 'hex')
$$;

CREATE OR REPLACE FUNCTION member_follows() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, {schema}, pg_temp AS $$
DECLARE
    last record;
    own text;
BEGIN
    SELECT id, number, hash INTO last FROM ledger ORDER BY id DESC LIMIT 1;
    SELECT value INTO own FROM club_setting WHERE key = 'origin';
    IF (NEW.id, NEW.number, NEW.before::text, NEW.origin::text, NEW.hash::text)
        IS DISTINCT FROM (last.id + 1, last.number + 1, last.hash::text, own, line_hash(NEW))
    THEN
        RAISE EXCEPTION 'a line of the ledger must follow from the last one' USING ERRCODE = '42501';
    END IF;
    RETURN NEW;
END $$;

-- At the end of the transaction. A sheet that comes back may write some hundreds of lines at once.
CREATE OR REPLACE FUNCTION member_names() RETURNS trigger
LANGUAGE plpgsql SET search_path = pg_catalog, {schema}, pg_temp AS $$
BEGIN
    IF NOT EXISTS (
        SELECT FROM (SELECT body FROM ledger ORDER BY id DESC LIMIT 2000) AS late
        WHERE position(format('["%s","%s",', TG_TABLE_NAME, NEW.id) IN late.body) > 0
    )
    THEN
        RAISE EXCEPTION 'a line of the ledger must name every row' USING ERRCODE = '42501';
    END IF;
    RETURN NULL;
END $$;

CREATE OR REPLACE TRIGGER verdict_of_members BEFORE INSERT ON verdict
    FOR EACH ROW WHEN (own_role() = 'member') EXECUTE FUNCTION member_tightens();
CREATE OR REPLACE TRIGGER standing_of_members BEFORE UPDATE ON standing
    FOR EACH ROW WHEN (own_role() = 'member') EXECUTE FUNCTION member_stands();
CREATE OR REPLACE TRIGGER ledger_of_members BEFORE INSERT ON ledger
    FOR EACH ROW WHEN (own_role() = 'member') EXECUTE FUNCTION member_follows();

DO $$
DECLARE
    added text;
BEGIN
    FOREACH added IN ARRAY ARRAY['inspection', 'opinion', 'verdict', 'attachment', 'attachment_data'] LOOP
        EXECUTE format('DROP TRIGGER IF EXISTS %1$s_named ON %1$s', added);
        EXECUTE format(
            'CREATE CONSTRAINT TRIGGER %1$s_named AFTER INSERT ON %1$s DEFERRABLE INITIALLY DEFERRED'
            ' FOR EACH ROW WHEN (own_role() = ''member'') EXECUTE FUNCTION member_names()', added
        );
    END LOOP;
END $$;

DROP POLICY IF EXISTS of_members ON inspection;
CREATE POLICY of_members ON inspection AS RESTRICTIVE FOR INSERT WITH CHECK (
    (SELECT own_role()) <> 'member'
    OR body::jsonb @> '{"kind": "before_use", "competent": false, "vouched": false}'
);
DROP POLICY IF EXISTS of_members ON opinion;
CREATE POLICY of_members ON opinion AS RESTRICTIVE FOR INSERT WITH CHECK (
    (SELECT own_role()) <> 'member' OR body::jsonb ->> 'stance' = 'doubts'
);
DROP POLICY IF EXISTS of_members ON attachment;
CREATE POLICY of_members ON attachment AS RESTRICTIVE FOR INSERT WITH CHECK (
    (SELECT own_role()) <> 'member' OR EXISTS (SELECT FROM trip WHERE trip.id = attachment.about)
);
DROP POLICY IF EXISTS of_members ON attachment_data;
CREATE POLICY of_members ON attachment_data AS RESTRICTIVE FOR INSERT WITH CHECK (
    (SELECT own_role()) <> 'member' OR id = encode(sha256(data), 'hex')
);
DROP POLICY IF EXISTS of_members ON ledger;
CREATE POLICY of_members ON ledger AS RESTRICTIVE FOR INSERT WITH CHECK (
    (SELECT own_role()) <> 'member' OR deed IN ('inspect', 'doubt', 'attach', 'judge anew')
);
