-- A withdrawn task's reason is what changed; "No longer needed" is said by whoever shows it.
UPDATE "task"
SET "reason" = regexp_replace(substring("reason" FROM length('No longer needed: ') + 1), '\.$', '')
WHERE "state" = 'withdrawn' AND "reason" LIKE 'No longer needed: %';
