@rem What Tauri calls to build: see gradlew.
@gradle %*
