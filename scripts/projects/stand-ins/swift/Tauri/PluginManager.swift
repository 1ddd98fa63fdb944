// What a plugin sees of Tauri's manager. The original finds commands through Objective-C, which is Apple's alone.
import UIKit

public class PluginManager {
  static let shared = PluginManager()
  public var viewController: UIViewController?
}
