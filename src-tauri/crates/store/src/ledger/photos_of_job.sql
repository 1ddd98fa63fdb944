SELECT photo.id, photo.format, photo.width, photo.height, photo.bytes, photo.taken_in
FROM job_photo
JOIN photo ON photo.id = job_photo.photo
WHERE job_photo.job = ?1
ORDER BY photo.id
