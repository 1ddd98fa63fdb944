// swift-tools-version:5.3

import PackageDescription

let package = Package(
  name: "tauri-plugin-wearbook-phone",
  platforms: [.macOS(.v10_15), .iOS(.v13)],
  products: [
    .library(name: "tauri-plugin-wearbook-phone", type: .static, targets: ["tauri-plugin-wearbook-phone"])
  ],
  dependencies: [.package(name: "Tauri", path: "../.tauri/tauri-api")],
  targets: [
    // Knows nothing of the screen, so that it can be checked without one.
    .target(name: "PhoneRules", path: "Sources/PhoneRules"),
    .target(
      name: "tauri-plugin-wearbook-phone",
      dependencies: [.byName(name: "Tauri"), .byName(name: "PhoneRules")],
      path: "Sources/Phone"),
  ]
)
