SELECT job.id, job.added_at, max(edit.id) AS latest_edit
FROM job
LEFT JOIN edit ON edit.job = job.id
GROUP BY job.id
ORDER BY job.id
