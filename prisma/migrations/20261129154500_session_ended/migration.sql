-- A session that ends, by whatever process, is over in all of them at once: whoever listens is told at commit.
CREATE FUNCTION session_has_ended() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_notify('fryward_session', '');
  RETURN NULL;
END
$$;

CREATE TRIGGER session_ended AFTER DELETE ON "session" FOR EACH ROW EXECUTE FUNCTION session_has_ended();
