SELECT job.id, job.added_at, max(edit.id) AS latest_edit
FROM job
LEFT JOIN edit ON edit.job = job.id
WHERE job.id NOT IN (SELECT job FROM put_away)
GROUP BY job.id
ORDER BY job.id
